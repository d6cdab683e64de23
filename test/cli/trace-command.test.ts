import { readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliWorkshop } from './run-cli';
import { WITH_ISLAND } from './stencils';

let workshop: CliWorkshop;
beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('draw.mjs', `export const drawing = () => \`${WITH_ISLAND.trimEnd()}\`;\n`);
  await workshop.file(
    'write.mjs',
    "import { writeFileSync } from 'node:fs';\nimport { drawing } from './draw.mjs';\nwriteFileSync('out.svg', drawing());\nconsole.log('written');\n",
  );
  await workshop.file('print.mjs', "import { drawing } from './draw.mjs';\nprocess.stdout.write(drawing());\n");
});
afterAll(() => workshop.dispose());

/** Where `<path` stands in draw.mjs. */
const at = { line: 1, character: 2 };
const from = {
  path: 'draw.mjs',
  range: { start: at, end: { ...at, character: 7 } },
  drawn: '<path>, drawn here',
  callers: [{ path: 'write.mjs', range: { start: { line: 2, character: 25 }, end: { line: 2, character: 32 } } }],
};

describe('trace', () => {
  it('leads findings to the line that drew, after what the program prints', async () => {
    const { code, stdout, stderr } = await workshop.run(['trace', '--', process.execPath, 'write.mjs']);
    expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
    expect(stdout).toMatch(/^written\nout\.svg {2}60 × 40 mm\n.*\n +draw\.mjs:2:3: <path>, drawn here\n/s);
    expect(readdirSync(workshop.folder).sort()).toEqual(['draw.mjs', 'out.svg', 'print.mjs', 'write.mjs']);
  });

  it('gives JSON alone on standard output', async () => {
    const { code, stdout, stderr } = await workshop.run([
      'trace',
      '--format',
      'json',
      '--',
      process.execPath,
      'write.mjs',
    ]);
    expect({ code, stderr }).toEqual({ code: 1, stderr: 'written\n' });
    const { files } = JSON.parse(stdout) as { files: { path: string; findings: { from: unknown }[] }[] };
    expect(files.map(({ path, findings }) => [path, findings[0]?.from])).toEqual([['out.svg', from]]);
  });

  it('checks a drawing that is printed, which stays the only thing printed', async () => {
    const { code, stdout, stderr } = await workshop.run([
      'trace',
      '--format',
      'unix',
      '--',
      process.execPath,
      'print.mjs',
    ]);
    expect({ code, stdout }).toEqual({ code: 1, stdout: WITH_ISLAND.trimEnd() });
    expect(stderr).toMatch(/^draw\.mjs:2:3: error: .* \(<path>, drawn here; <stdout>:\d+:\d+\) \[floating-island\]\n$/);
  });

  it('writes the report to a file', async () => {
    const report = ['--report', 'report.json', '--format', 'json'];
    const { code, stdout } = await workshop.run(['trace', ...report, '--', process.execPath, 'print.mjs']);
    expect({ code, stdout }).toEqual({ code: 1, stdout: WITH_ISLAND.trimEnd() });
  });

  it('of a program that fails ends with its code, in one line', async () => {
    await workshop.file('fail.mjs', "console.error('no reed'); process.exitCode = 5;");
    const { code, stdout, stderr } = await workshop.run(['trace', '--', process.execPath, 'fail.mjs']);
    expect({ code, stdout }).toEqual({ code: 5, stdout: '' });
    expect(stderr).toMatch(/^no reed\ntombolo: .*fail\.mjs ended with 5; nothing it wrote was checked\n$/);
  });

  it('of a program that draws nothing says so', async () => {
    const { code, stdout, stderr } = await workshop.run(['trace', '--', process.execPath, '-e', '0']);
    expect({ code, stdout }).toEqual({ code: 0, stdout: '' });
    expect(stderr).toMatch(/^tombolo: .* wrote no SVG\n$/);
  });

  it('of a program that is not there is refused', async () => {
    const { code, stderr } = await workshop.run(['trace', '--', 'no-such-program']);
    expect({ code, stderr }).toEqual({ code: 2, stderr: 'tombolo: no-such-program: no such file or folder\n' });
  });
});
