/**
 * How long an edit of one file of a large project takes, beside the check of that file alone and of the whole project,
 * all in one run on the same seeded sheets. Ratios hold from machine to machine; times do not.
 */
import { check, checkProject, type ProjectReport, readConfig } from '../../src/engine/index';
import { blobSheet } from './seeded';

const FILES = 8;
const SEGMENTS = 20_000;

/** An edit in the middle of the text: one digit of a coordinate. */
function edited(svg: string, turn: number): string {
  const at = svg.indexOf('M', svg.length / 2) + 1;
  return (
    `${svg.slice(0, at)}${String(Number(/^[\d.]+/.exec(svg.slice(at))?.[0] ?? 0) + 0.01 * (turn + 1))}` +
    svg.slice(at + (/^[\d.]+/.exec(svg.slice(at))?.[0].length ?? 0))
  );
}

function time<T>(run: () => T): { readonly ms: number; readonly result: T } {
  const start = performance.now();
  const result = run();
  return { ms: performance.now() - start, result };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] as number;
}

/** @param rounds how often the edit is timed; the first ones warm up */
function benchProject(rounds: number): void {
  const names = Array.from({ length: FILES }, (_, i) => `${i}.svg`);
  const texts = new Map(names.map((name, i) => [name, blobSheet(SEGMENTS, 7, i + 1)]));
  const { config } = readConfig(JSON.stringify({ layers: names.map((from) => ({ from })) }));
  const settings = { config, budget: 600_000 };
  const alone: number[] = [];
  const edits: number[] = [];
  let report: ProjectReport = checkProject(texts, settings);
  for (let turn = 0; turn < rounds; turn += 1) {
    const text = edited(texts.get('3.svg') ?? '', turn);
    alone.push(time(() => check(text, settings)).ms);
    const run = time(() => checkProject(new Map(texts).set('3.svg', text), settings, report));
    edits.push(run.ms);
    report = run.result;
  }
  const whole = time(() => checkProject(texts, settings));
  const single = median(alone);
  const pairs = Math.max(0, whole.ms - FILES * single) * (2 / FILES);
  const findings = [...report.files.values()].reduce((sum, { complete }) => sum + complete.length, 0);
  console.log(
    `${FILES} files of ${SEGMENTS} segments, ${findings} findings: all from scratch ${whole.ms.toFixed(0)} ` +
      'ms, one file ' +
      `alone ${single.toFixed(0)} ms, the pairs that touch it about ${pairs.toFixed(0)} ms, after an edit of ` +
      `it ${median(edits).toFixed(0)} ms: ` +
      `${(median(edits) / (2 * single + pairs)).toFixed(2)} of twice the file and its pairs`,
  );
}

benchProject(5);
