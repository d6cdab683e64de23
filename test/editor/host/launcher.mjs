#!/usr/bin/env node
// Takes the arguments of the desktop VS Code that @vscode/test-electron starts, runs the suite in the embedded
// workbench instead, and exits with the suite's code.
import { runSuite } from './run-suite.mjs';

const words = process.argv.slice(2);
const value = (name) => words.find((word) => word.startsWith(`--${name}=`))?.slice(name.length + 3);

try {
  process.exitCode = await runSuite({
    folder: words.find((word) => !word.startsWith('-')),
    developmentPath: value('extensionDevelopmentPath'),
    testsPath: value('extensionTestsPath'),
  });
} catch (error) {
  console.error(error);
  process.exitCode = 1;
}
