// Bundles the fuzz and runs it.
import { spawnSync } from 'node:child_process';
import { root } from '../../src/build/bundles.mjs';
import { bundled } from './bundle.mjs';

const [main, batch] = await Promise.all(['main', 'batch'].map((name) => bundled(`test/fuzz/${name}.ts`)));
const { status } = spawnSync(process.execPath, [main.file, ...process.argv.slice(2)], {
  stdio: 'inherit',
  cwd: root,
  env: { ...process.env, TOMBOLO_FUZZ_BATCH: batch.file },
});
main.remove();
batch.remove();
process.exitCode = status ?? 1;
