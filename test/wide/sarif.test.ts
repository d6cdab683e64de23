/**
 * SARIF logs beside the validator that Microsoft publishes (@microsoft/sarif-multitool): the schema of OASIS, its own
 * rules for SARIF, and those of GitHub's code scanning.
 */
import { execFile } from 'node:child_process';
import { chmodSync, cpSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it as test } from 'vitest';
import { CliWorkshop } from '../cli/run-cli';
import { WITH_ISLAND } from '../cli/stencils';

const ROOT = path.resolve(import.meta.dirname, '../..');
const TOOL = path.join(ROOT, 'src/build/corpora/node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool');

let workshop: CliWorkshop;

beforeAll(async () => {
  chmodSync(TOOL, 0o755);
  workshop = await CliWorkshop.create();
  cpSync(path.join(ROOT, 'media/demo'), workshop.path('demo'), { recursive: true });
  await workshop.file('island.svg', WITH_ISLAND);
  await workshop.file('drawn.svg', WITH_ISLAND.replace('<path', '<path data-tombolo-from="posts.mjs:3:7"'));
  await workshop.file('posts.mjs', 'const post = 1;\n\nwrite(`<path d="" />`, post);\n');
  await workshop.file('spoilt.svg', Buffer.from([0x3c, 0xff, 0xfe, 0x3e]));
}, 120_000);
afterAll(() => workshop.dispose());

/** What the validator says of a log, but for what it reports as a note or a warning. */
function errorsIn(log: string): Promise<string[]> {
  writeFileSync(workshop.path('log.sarif'), log);
  const words = ['validate', '--rule-kind', 'Sarif;Ghas', workshop.path('log.sarif')];
  const env = { ...process.env, DOTNET_SYSTEM_GLOBALIZATION_INVARIANT: '1' };
  return new Promise((settle) => {
    execFile(TOOL, words, { env }, (_error, stdout) => {
      expect(stdout).toContain('1 files scanned');
      settle(stdout.split('\n').filter((line) => /: error /.test(line)));
    });
  });
}

describe.skipIf(process.platform !== 'linux')('SARIF', () => {
  test.each([
    ['of the demo, with its fixes', ['demo', '--mends']],
    ['of a run that failed with one file', ['island.svg', 'spoilt.svg', 'gone.svg']],
    ["at the program's lines", ['drawn.svg', '--at-generator']],
    ['of nothing that was found', ['demo/trail', '--only', 'mixed-colours']],
  ])('%s is without errors', async (_what, words) => {
    const { stdout } = await workshop.run(['check', ...words, '--format', 'sarif']);
    expect(await errorsIn(stdout)).toEqual([]);
  });

  test('the validator finds what is wrong', async () => {
    const { stdout } = await workshop.run(['check', 'island.svg', '--format', 'sarif']);
    expect(await errorsIn(stdout.replace('"version": "2.1.0"', '"version": "2.1.0", "paint": 1'))).not.toEqual([]);
  });
});
