/** Runs inside the extension host: resolving is exit code 0, rejecting is exit code 1. */
import { bridgeTests } from './bridges';
import { configTests } from './config-tests';
import { editorTests } from './editor-tests';
import { projectTests } from './project-tests';
import { tests as fileTests } from './tests';

const tests = { ...bridgeTests, ...fileTests, ...projectTests, ...configTests, ...editorTests };

export async function run(): Promise<void> {
  let failed = 0;
  for (const [name, test] of Object.entries(tests)) {
    const start = Date.now();
    try {
      await test();
      console.log(`ok - ${name} (${Date.now() - start} ms)`);
    } catch (error) {
      failed += 1;
      console.error(`not ok - ${name}\n${error instanceof Error ? error.stack : String(error)}`);
    }
  }
  console.log(`${Object.keys(tests).length - failed} passed, ${failed} failed`);
  if (failed > 0) throw new Error(`${failed} failed`);
}
