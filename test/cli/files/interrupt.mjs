/**
 * Loaded before a program (`node --import`): at one of the steps by which a file gets written, the program is killed as by
 * the system, or the step fails as on a full disk.
 *   TOMBOLO_STEP   which step, counted from 1
 *   TOMBOLO_FAULT  `kill` or `full`
 */
import { appendFileSync, default as fs } from 'node:fs';

const step = Number(process.env.TOMBOLO_STEP);
let steps = 0;

/** Never comes back where the program is killed. */
function fault() {
  if (process.env.TOMBOLO_FAULT === 'kill') process.kill(process.pid, 'SIGKILL');
  return Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' });
}

/** @param owner of a function of `node:fs` that tells its end to a callback */
function watch(name, counts = () => true) {
  const original = fs[name];
  fs[name] = (...args) => {
    if (counts(...args)) steps += 1;
    if (steps !== step || !counts(...args)) return original(...args);
    return args.at(-1)(fault());
  };
}

watch('open', (_path, flags) => String(flags).includes('w'));
for (const name of ['write', 'fsync', 'close', 'chown', 'chmod', 'rename', 'unlink']) watch(name);

const { writeFile, mkdir, rename } = fs.promises;
fs.promises.writeFile = async (path, bytes, ...rest) => {
  steps += 1;
  if (steps !== step) return writeFile(path, bytes, ...rest);
  const all = Buffer.from(bytes);
  appendFileSync(path, all.subarray(0, all.length / 2));
  throw fault();
};
for (const [name, original] of Object.entries({ mkdir, rename })) {
  fs.promises[name] = async (...args) => {
    steps += 1;
    if (steps === step) throw fault();
    return original(...args);
  };
}
