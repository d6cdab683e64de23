/**
 * Programs that draw: what tracing adds for each element, and how long it takes from a save to the finding at the
 * program's line, beside the plain run and a warm check of the same drawing.
 * Arguments: the bundles of the server and of the command line.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createEngine } from '../../src/engine/index';
import { ServerProcess } from '../server/server-process';
import { blobSheet } from './seeded';

const ELEMENTS = 20_000;
const SEGMENTS = 2_000;
const SAVES = 9;

const [serverFile = '', cli = ''] = process.argv.slice(2);

/** Each writes so many elements, which take no time to check, and says on standard error what processor time it has used, in seconds. */
const IN_JAVASCRIPT = `import { writeFileSync } from 'node:fs';
const reed = (x) => \`<g id="reed\${x}"/>\`;
const reeds = Array.from({ length: ${ELEMENTS} }, (_, i) => reed(i));
writeFileSync('reeds.svg', \`<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="90mm">\${reeds.join('')}</svg>\`);
process.on('exit', () => { const { user, system } = process.cpuUsage(); console.error((user + system) / 1e6); });
`;
const IN_PYTHON = `import time
def reed(x):
    return f'<g id="reed{x}"/>'
reeds = ''.join(reed(x) for x in range(COUNT))
with open('reeds.svg', 'w') as file:
    file.write(f'<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="90mm">{reeds}</svg>')
import sys
print(time.process_time(), file=sys.stderr)
`;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Seconds of the program's own process, the median of some runs. */
function secondsOf(folder: string, words: readonly string[]): number {
  const runs = Array.from({ length: 5 }, () => {
    const [command = '', ...rest] = words;
    const { stderr } = spawnSync(command, rest, { cwd: folder, encoding: 'utf8' });
    return Number(/^[\d.e-]+$/m.exec(stderr)?.[0]);
  });
  return median(runs);
}

function overhead(folder: string, name: string, command: string, text: (count: number) => string): void {
  const measured = (count: number) => {
    writeFileSync(path.join(folder, name), text(count));
    const plain = secondsOf(folder, [command, name]);
    const report = path.join(folder, 'report.json');
    const traced = [process.execPath, cli, 'trace', '--only', 'unstated-size', '--report', report, '--'];
    return { plain, traced: secondsOf(folder, [...traced, command, name]) };
  };
  const [few, many] = [measured(1), measured(ELEMENTS)];
  const added = many.traced - many.plain - (few.traced - few.plain);
  console.log(
    `${name}: start ${few.plain.toFixed(2)} → ${few.traced.toFixed(2)} s, ${ELEMENTS} elements ` +
      `${many.plain.toFixed(2)} → ${many.traced.toFixed(2)} s: ${((added / ELEMENTS) * 1e6).toFixed(1)} µs an element`,
  );
}

/** Draws the same sheet at each run, a little moved, so that nothing is known of it from before. */
const sheetProgram = (turn: number): string => `import { writeFileSync } from 'node:fs';
const paths = ${JSON.stringify([...blobSheet(SEGMENTS).matchAll(/ d="([^"]*)"/g)].map(([, d]) => d))};
const drawn = paths.map((d, i) => \`<path transform="translate(\${${turn} / 1000} 0)" d="\${d}"/>\`);
writeFileSync('sheet.svg', \`${blobSheet(SEGMENTS).split('\n')[0] ?? ''}\${drawn.join('\\n')}</svg>\`);
`;

async function saveToFinding(): Promise<void> {
  const marks = mkdtempSync(path.join(tmpdir(), 'tombolo-bench-marks-'));
  const server = await ServerProcess.start(serverFile, {}, undefined, { marks });
  server.write('sheet.mjs', sheetProgram(0));
  const words = [cli, 'watch', '--marks', path.join(marks, 'sheet.json'), '--', process.execPath, 'sheet.mjs'];
  const watching = spawn(process.execPath, words, { cwd: server.folder, stdio: 'ignore' });
  const uri = server.uri('sheet.mjs');
  const published = () => server.published.filter((sent) => sent.uri === uri && sent.diagnostics.length > 0).length;
  await server.until('the first findings', () => published() || undefined);
  const times: number[] = [];
  for (let turn = 1; turn <= SAVES; turn += 1) {
    await new Promise((resolve) => setTimeout(resolve, 1500));
    const before = published();
    const start = performance.now();
    server.write('sheet.mjs', sheetProgram(turn));
    await server.until('the findings', () => published() > before || undefined);
    times.push(performance.now() - start);
  }
  const plain = Array.from({ length: 5 }, () => {
    const start = performance.now();
    spawnSync(process.execPath, ['sheet.mjs'], { cwd: server.folder });
    return performance.now() - start;
  });
  const ended = new Promise((resolve) => watching.on('close', resolve));
  watching.kill();
  await ended;
  await server.stop();
  rmSync(marks, { recursive: true, force: true });
  console.log(
    `save to finding, ${SEGMENTS} segments: ${median(times).toFixed(0)} ms (longest ${Math.max(...times).toFixed(0)}); ` +
      `plain run ${median(plain).toFixed(0)} ms, warm check ${warmCheck().toFixed(0)} ms`,
  );
}

/** Milliseconds of a check of the sheet, each time another, by an engine that has run before. */
function warmCheck(): number {
  const engine = createEngine();
  const times = Array.from({ length: SAVES }, (_, turn) => {
    const start = performance.now();
    engine.check(blobSheet(SEGMENTS, 7, turn), {}, 'sheet.svg');
    return performance.now() - start;
  });
  return median(times.slice(2));
}

const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-bench-'));
overhead(folder, 'reeds.mjs', process.execPath, (count) => IN_JAVASCRIPT.replace(`${ELEMENTS}`, String(count)));
overhead(folder, 'reeds.py', 'python3', (count) => IN_PYTHON.replace('COUNT', String(count)));
rmSync(folder, { recursive: true, force: true });
await saveToFinding();
