/** The command line over a thousand icons: by one thread and by as many as there are cores, anew and with what was kept. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import path from 'node:path';

const ICONS = path.resolve('node_modules/@tabler/icons/icons/outline');
const COUNT = 1000;

const commandLine = process.argv[2]!;
const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-files-'));
mkdirSync(path.join(folder, 'icons'));
for (const name of readdirSync(ICONS).sort().slice(0, COUNT)) {
  copyFileSync(path.join(ICONS, name), path.join(folder, 'icons', name));
}
writeFileSync(path.join(folder, 'icons/tombolo.json'), '{ "size": { "width": "60mm" } }\n');

function seconds(...words: string[]): number {
  const start = performance.now();
  const { status, stderr } = spawnSync(
    process.execPath,
    [commandLine, 'check', 'icons', '--format', 'json', ...words],
    {
      cwd: folder,
      maxBuffer: 1e9,
    },
  );
  if (status === 2) throw new Error(stderr.toString());
  return (performance.now() - start) / 1000;
}

const [alone, shared] = [seconds('--jobs', '1'), seconds()];
const [first, again] = [seconds('--cache', 'kept'), seconds('--cache', 'kept')];
rmSync(folder, { recursive: true });
console.log(
  `check of ${COUNT} icons: ${alone.toFixed(1)} s by one thread, ${shared.toFixed(1)} s (× ${(shared / alone).toFixed(2)}) by ` +
    `${availableParallelism()} cores; ${first.toFixed(1)} s and then ${again.toFixed(1)} s (× ${(again / first).toFixed(2)}) with --cache`,
);
