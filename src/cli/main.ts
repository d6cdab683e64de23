import { isMainThread } from 'node:worker_threads';
import { serveChecks } from './check/check-threads';
import { failureAt } from './failure';
import { Host } from './host';
import { runProgram } from './program';

const host = new Host();

/** Whoever reads us may stop early, as `head` does: that is no error. Anything else is. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') host.fail(failureAt('standard output', error));
  process.exit();
});
process.on('uncaughtException', (error) => {
  host.fail(error);
  process.exit();
});

if (isMainThread) void runProgram(process.argv.slice(2), host);
else serveChecks();
