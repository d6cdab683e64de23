/**
 * Seams of 35 open pictures of many colours (`pictures/spread.json`, of the sets named in `pictures/read-pictures.ts`:
 * the first five of each set, by a hash of their names, with a short overlap or a bare gap), each extended by the
 * fix that is offered, one after the other, until none is. Prints what was refused, what is left, and how text and print change.
 */
import { setImmediate } from 'node:timers/promises';
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  applyEdits,
  candidatesFor,
  check,
  type Fix,
  type FixRefusal,
  proveFix,
  type Report,
} from '../../src/engine/index';
import type { ReportedFinding } from '../../src/report/finding-id';
import { isRefusal } from '../../src/report/refusal';
import { readPictures } from './pictures/read-pictures';

const LEAST_CASES = 74;

/** Of the short overlaps that were there. */
const MOST_LEFT = 0.05;

/** Times as long as they were, on average. */
const MOST_GROWTH = 1.5;

/** mm: of sheets laid by hand. */
const SLIP = 0.5;
const PIXELS_PER_MM = 8;

/** Of 255: edges that only met let the ground through by a quarter, which ends where one goes on under the other. */
const SEEN = 80;

/** mm of the seams' width that may look otherwise, all along. */
const MOST_REPAINTED = 0.002;

/** mm²: a few pixels at corners. */
const MOST_ELSEWHERE = 0.2;

/** Of straight seams, as many may get a curve, at their ends, and so many commands more each on average. */
const MOST_BENT = 0.1;
const MOST_COMMANDS = 6;

interface Applied {
  readonly finding: ReportedFinding;
  readonly before: string;
  readonly after: string;
}

interface Outcome {
  readonly name: string;
  readonly before: string;
  readonly after: string;
  readonly seams: readonly ReportedFinding[];
  readonly refusals: readonly FixRefusal[];
  readonly applied: readonly Applied[];
  readonly left: readonly ReportedFinding[];
}

const outcomes: Outcome[] = [];

const seamsOf = ({ complete }: Report) =>
  complete.filter(({ check: id }) => id === 'short-overlap' || id === 'bare-gap');

function spreadOf(report: Report, finding: ReportedFinding): Fix | FixRefusal {
  const candidate = candidatesFor(report, finding).find(({ kind }) => kind === 'spread-colour');
  const result = candidate && proveFix(report, candidate);
  if (!result) throw new Error(`Nothing is said of ${finding.message}`);
  return result;
}

/** Until no seam is left that can be extended, or as many were as there could be reasons for. */
function extendAll(name: string, text: string): Outcome {
  let report = check(text, { budget: Infinity });
  const seams = seamsOf(report);
  const refusals = seams.map((finding) => spreadOf(report, finding)).filter((result) => isRefusal(result));
  const applied: Applied[] = [];
  while (applied.length < 3 * seams.length) {
    const next = nextSpread(report);
    if (!next) break;
    const after = applyEdits(report.text, next.fix.edits);
    applied.push({ finding: next.finding, before: report.text, after });
    report = check(after, { budget: Infinity }, report);
  }
  return { name, before: text, after: report.text, seams, refusals, applied, left: seamsOf(report) };
}

function nextSpread(report: Report): { finding: ReportedFinding; fix: Fix } | undefined {
  for (const finding of seamsOf(report)) {
    const fix = spreadOf(report, finding);
    if (!isRefusal(fix)) return { finding, fix };
  }
  return undefined;
}

beforeAll(async () => {
  for (const { name, text } of readPictures('spread.json')) {
    outcomes.push(extendAll(name, text));
    await setImmediate();
  }
  console.log(tableOf(outcomes));
}, 3_600_000);

describe('seams of pictures of many colours, extended', () => {
  it('are each offered, or refused with what to do', () => {
    const cases = outcomes.reduce((sum, { seams }) => sum + seams.length, 0);
    expect(cases).toBeGreaterThanOrEqual(LEAST_CASES);
    for (const { reason, first } of outcomes.flatMap(({ refusals }) => refusals)) {
      expect(reason).toMatch(/^[A-Z].*\.$/);
      expect(reason.length).toBeLessThanOrEqual(120);
      expect(first).toMatch(/^[A-Z].*\.$/);
    }
  });

  it('are hardly any left after all', () => {
    const count = (findings: readonly ReportedFinding[]) =>
      findings.filter(({ check: id }) => id === 'short-overlap').length;
    const [before, left] = [
      outcomes.reduce((sum, { seams }) => sum + count(seams), 0),
      outcomes.reduce((sum, outcome) => sum + count(outcome.left), 0),
    ];
    expect(left / before).toBeLessThanOrEqual(MOST_LEFT);
  });

  it('make the texts little longer', () => {
    expect(mean(outcomes.map(growthOf))).toBeLessThanOrEqual(MOST_GROWTH);
  });

  it('stay straight where they were', () => {
    const straight = outcomes.flatMap(({ applied }) => applied.filter(({ finding }) => isStraight(finding)));
    expect(straight.length).toBeGreaterThan(10);
    const bent = straight.filter(({ before, after }) => curvesIn(after) > curvesIn(before));
    const more = mean(straight.map(({ before, after }) => commandsIn(after) - commandsIn(before)));
    console.log(`${straight.length} straight seams: ${bent.length} got a curve, ${more.toFixed(1)} commands more each`);
    expect(bent.length / straight.length).toBeLessThan(MOST_BENT);
    expect(more).toBeLessThan(MOST_COMMANDS);
  });

  it('look the same, but for the seam itself', async () => {
    const otherwise: string[] = [];
    let [near, far, length] = [0, 0, 0];
    for (const { name, before, after, applied } of outcomes) {
      const seen = repainted(before, after, applied);
      await setImmediate();
      if (seen.far + seen.near > 0)
        otherwise.push(`${name}: ${seen.near.toFixed(2)} mm², elsewhere ${seen.far.toFixed(2)}`);
      // What was bare is painted where a gap is closed.
      if (applied.some(({ finding }) => finding.check === 'bare-gap')) continue;
      far += seen.far;
      near += seen.near;
      length += seen.length;
    }
    console.log(
      `${near.toFixed(2)} mm² look otherwise along ${length.toFixed(0)} mm of seams, ${far.toFixed(2)} elsewhere`,
    );
    console.log(otherwise.join('\n'));
    expect(far).toBeLessThan(MOST_ELSEWHERE);
    expect(near / length).toBeLessThan(MOST_REPAINTED);
  }, 900_000);
});

function mean(values: readonly number[]): number {
  return sumOf(values) / values.length;
}

function growthOf({ before, after }: Outcome): number {
  return after.length / before.length;
}

/** Letters of drawing commands; those that are implied are not counted, on either side. */
function commandsIn(text: string): number {
  return lettersIn(text, /[a-z]/gi);
}

function curvesIn(text: string): number {
  return lettersIn(text, /[csqta]/gi);
}

function lettersIn(text: string, letters: RegExp): number {
  const data = [...text.matchAll(/\sd="([^"]*)"/g)].map((match) => match[1] ?? '');
  return data.reduce((sum, each) => sum + (each.match(letters) ?? []).length, 0);
}

interface Place {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

function courseOf({ subject }: ReportedFinding): readonly Place[] {
  if (subject?.kind === 'overlap') return subject.overlap.course;
  if (subject?.kind !== 'gap') return [];
  return (subject.apart ?? [{ subject }]).flatMap((each) => {
    if (each.subject?.kind !== 'gap') return [];
    const { minX, minY, maxX, maxY } = each.subject.gap.extent;
    return [{ ax: minX, ay: minY, bx: maxX, by: maxY }];
  });
}

/** A seam that runs along one line for the most part: it may end across its course. */
function isStraight(finding: ReportedFinding): boolean {
  if (finding.subject?.kind !== 'overlap') return false;
  const course = courseOf(finding);
  const longest = course.reduce((most, each) => (lengthOf(each) > lengthOf(most) ? each : most), course[0] as Place);
  if (lengthOf(longest) < 2) return false;
  const along = course.filter(({ ax, ay, bx, by }) => beside(longest, ax, ay) < 0.05 && beside(longest, bx, by) < 0.05);
  return sumOf(along.map(lengthOf)) > 0.8 * sumOf(course.map(lengthOf));
}

function lengthOf({ ax, ay, bx, by }: Place): number {
  return Math.hypot(bx - ax, by - ay);
}

/** mm from the line through a place. */
function beside({ ax, ay, bx, by }: Place, x: number, y: number): number {
  return Math.abs((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / Math.hypot(bx - ax, by - ay);
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** mm² that look otherwise: near the seams that were extended, and elsewhere; and the length of those seams in mm. */
function repainted(before: string, after: string, applied: readonly Applied[]) {
  const [a, b] = [render(before), render(after)];
  const courses = applied.flatMap(({ finding }) => courseOf(finding));
  let [near, far] = [0, 0];
  for (let i = 0; i < a.pixels.length; i += 4) {
    if (![0, 1, 2, 3].some((part) => Math.abs((a.pixels[i + part] ?? 0) - (b.pixels[i + part] ?? 0)) > SEEN)) continue;
    const [x, y] = [((i / 4) % a.width) + 0.5, Math.floor(i / 4 / a.width) + 0.5].map((each) => each / PIXELS_PER_MM);
    if (courses.some((place) => isNear(place, x ?? 0, y ?? 0))) near += 1;
    else far += 1;
  }
  const length = applied.reduce(
    (sum, { finding: { subject } }) => sum + (subject?.kind === 'overlap' ? subject.overlap.length : 0),
    0,
  );
  return { near: near / PIXELS_PER_MM ** 2, far: far / PIXELS_PER_MM ** 2, length };
}

function render(svg: string) {
  const image = new Resvg(svg, { fitTo: { mode: 'zoom', value: (PIXELS_PER_MM * 25.4) / 96 } }).render();
  return { pixels: image.pixels, width: image.width };
}

function isNear({ ax, ay, bx, by }: Place, x: number, y: number): boolean {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(ax + t * dx - x, ay + t * dy - y) < 2 * SLIP;
}

function tableOf(all: readonly Outcome[]): string {
  const lines = all.flatMap(({ name, seams, applied, left, refusals, ...texts }) => {
    const grown = growthOf({ name, seams, applied, left, refusals, ...texts }).toFixed(2);
    return [
      `${name}: ${seams.length} seams, ${applied.length} extended, ${left.length} left, text × ${grown}`,
      ...refusals.map(({ reason, first }) => `  refused: ${reason} ${first ?? ''}`),
      ...left.map(({ message }) => `  left: ${message}`),
    ];
  });
  const sum = (of: (outcome: Outcome) => number) => all.reduce((total, each) => total + of(each), 0);
  return [
    ...lines,
    `${sum(({ seams }) => seams.length)} seams, ${sum(({ refusals }) => refusals.length)} refused at first, ` +
      `${sum(({ left }) => left.length)} left after ${sum(({ applied }) => applied.length)}; ` +
      `texts × ${mean(all.map(growthOf)).toFixed(2)}`,
  ].join('\n');
}
