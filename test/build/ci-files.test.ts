/** What other people's CI runs: the action's own script with the real command line, and the hook's entry. */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, it as test } from 'vitest';
import { parse } from 'yaml';
import { CliWorkshop } from '../cli/run-cli';
import { SOUND, WITH_ISLAND } from '../cli/stencils';

const ROOT = path.resolve(import.meta.dirname, '../..');
const read = (name: string) => parse(readFileSync(path.join(ROOT, name), 'utf8'));

let workshop: CliWorkshop;

/** Stands for npx: says what it was asked for, and runs the command that is named after the package. */
beforeAll(async () => {
  workshop = await CliWorkshop.create();
  mkdirSync(workshop.path('bin'));
  writeFileSync(
    workshop.path('bin/npx'),
    `#!/bin/bash\necho "$1 $2 $3" >&2\nshift 3\nexec ${process.execPath} ${workshop.bundle} "$@"\n`,
  );
  chmodSync(workshop.path('bin/npx'), 0o755);
  mkdirSync(workshop.path('a folder'));
  await workshop.file('a folder/island.svg', WITH_ISLAND);
  await workshop.file('sound.svg', SOUND);
});
afterAll(() => workshop.dispose());

describe('the action', () => {
  const { inputs, runs } = read('action.yml');

  function run(given: Record<string, string>) {
    const [{ run: script, env }] = runs.steps;
    const value = (text: string) =>
      text.replace(/\$\{\{ inputs\.(\w+) \}\}/g, (_all, name) => given[name] ?? inputs[name].default);
    const own = Object.fromEntries(
      Object.entries(env as Record<string, string>).map(([key, text]) => [key, value(text)]),
    );
    return spawnSync('bash', ['-e', '-o', 'pipefail', '-c', script], {
      cwd: workshop.folder,
      env: { ...process.env, ...own, PATH: `${workshop.path('bin')}:${process.env.PATH}` },
      encoding: 'utf8',
    });
  }

  it('fails with annotations where there are errors, whatever the names of folders', () => {
    const { status, stdout, stderr } = run({ files: 'a folder\n', version: '1.2.3' });
    expect(status).toBe(1);
    expect(stdout).toMatch(/^::error file=a folder\/island\.svg,line=\d+/m);
    expect(stderr).toContain('--yes --package=tombolo-stencil@1.2.3 tombolo');
  });

  it('checks everything where nothing is named, and takes options', () => {
    expect(run({}).status).toBe(1);
    expect(run({ files: 'sound.svg' }).status).toBe(0);
    expect(run({ options: '--skip=floating-island\n--max-warnings=9' }).status).toBe(0);
  });

  it('runs nothing that is written into its inputs', () => {
    const { status } = run({ files: '$(touch hurt)\n"; touch hurt; "', options: '`touch hurt`' });
    expect(status).toBe(2);
    expect(() => readFileSync(workshop.path('hurt'))).toThrow();
  });
});

test('the hook runs a command that there is, over SVG files alone', () => {
  const [{ entry, types, language }] = read('.pre-commit-hooks.yaml');
  expect({ types, language }).toEqual({ types: ['svg'], language: 'node' });
  const { bin, scripts } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8'));
  const [command, ...words] = entry.split(' ');
  expect(Object.keys(bin)).toContain(command);
  // It is installed from the repository, where nothing is built: packing builds.
  expect(scripts.prepack).toContain('--minify');
  const at = [workshop.bundle, ...words, 'sound.svg', path.join('a folder', 'island.svg')];
  expect(() => execFileSync(process.execPath, at, { cwd: workshop.folder, stdio: 'pipe' })).toThrow(
    /floating-island|island/,
  );
});
