/** A change is never lost, whenever it comes. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it as test, vi } from 'vitest';
import type { CheckOptions } from '../../../src/cli/check-command';
import { Host } from '../../../src/cli/host';
import { Rounds } from '../../../src/cli/watch/rounds';
import type { Screen } from '../../../src/cli/watch/screen';
import { SOUND } from '../stencils';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tombolo-rounds-'));
  writeFileSync(path.join(folder, 'sun.svg'), SOUND);
});
afterEach(() => rmSync(folder, { recursive: true }));

test('a change that comes into a round ends it, and begins another', async () => {
  const report = vi.fn();
  const screen = { report, remark: vi.fn() } as Partial<Screen> as Screen;
  const options = { format: 'text', maxWarnings: 0 } as CheckOptions;
  const rounds = new Rounds({ paths: [folder], program: [], options, host: new Host(), screen });
  // After the pause that `changed` makes, so small a round would be over.
  const inside = rounds as unknown as { running: object | undefined; next(): Promise<void> };
  rounds.begin();
  await vi.waitFor(() => expect(inside.running).toBeDefined(), { interval: 1 });
  await inside.next();
  expect(report).toHaveBeenCalledTimes(1);
  await rounds.end();
});
