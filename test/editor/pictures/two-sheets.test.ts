/** The README's picture of a layer cut as two sheets: drawn by the command line, without an editor. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { CliWorkshop } from '../../cli/run-cli';
import { root } from '../workbench/root';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
});
afterAll(() => workshop.dispose());

test('the two sheets of the numeral', async () => {
  const drawing = await readFile(path.join(root, 'media/demo/numeral-post.svg'), 'utf8');
  const { stdout } = await workshop.run(['bridge', '-', '--two-sheets'], { input: drawing });
  const out = path.join(root, 'media/two-sheets.png');
  const { code } = await workshop.run(['picture', '-', '--look', 'sheets', '--scale', '4', '--out', out], {
    input: stdout,
  });
  expect(code).toBe(0);
});
