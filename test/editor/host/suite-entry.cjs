// The workbench is given this file; it runs the real suite ($SUITE_PATH) and leaves a verdict in a file. The file
// matters: when the extension host dies in mid-run, the workbench reports exit code 0.
const { AsyncLocalStorage } = require('node:async_hooks');
const { writeFileSync } = require('node:fs');
const { tmpdir } = require('node:os');
const path = require('node:path');
const { format } = require('node:util');

// Marks what the suite prints, so that it can be told from what the extension host prints. VS Code makes console.log
// and its like read-only, but the console object itself can be replaced.
const inSuite = new AsyncLocalStorage();
const levels = ['log', 'info', 'warn', 'error'];
globalThis.console = new Proxy(console, {
  get: (target, key) =>
    levels.includes(key) && inSuite.getStore() ? (...words) => target[key](`[suite] ${format(...words)}`) : target[key],
});

exports.run = () =>
  inSuite.run(true, async () => {
    const verdict = (text) => writeFileSync(path.join(tmpdir(), 'suite-verdict'), text);
    try {
      await require(process.env.SUITE_PATH).run();
      verdict('passed');
    } catch (error) {
      console.error(error?.stack ?? String(error));
      verdict('failed');
      throw error;
    }
  });
