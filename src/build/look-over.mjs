// npm test, first: linter, compiler and build side by side, as the compiler keeps one processor busy and no more. What each says
// is printed as a whole when it has ended.
import { spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';
import { root } from './bundles.mjs';

/** Gives the code that a script of package.json ends with. */
async function run(script) {
  // Errors in the place where they come among the rest.
  const child = spawn('sh', ['-c', `npm run ${script} 2>&1`], { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = new Promise((settle) => child.once('close', (code) => settle(code ?? 1)));
  process.stdout.write(await text(child.stdout));
  return ended;
}

const codes = await Promise.all(['lint', 'typecheck', 'build'].map(run));
process.exitCode = codes.find((code) => code !== 0) ?? 0;
