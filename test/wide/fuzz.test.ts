/**
 * 20,000 documents: real files that were cut short, had stretches put in, taken out, doubled and swapped, and mixtures
 * of pieces. No exception, every span within the text, every run within its time. Seeded, so that a failure can be had
 * again.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { check } from '../../src/engine/check/check-file';
import { seededRandom } from '../benchmark/seeded';
import { PIECES } from '../fuzz/pieces';

const DOCUMENTS = 20_000;
/** Milliseconds for one small document; far beyond what any takes, far below a hang. */
const BUDGET = 10_000;

const ICONS = path.resolve(__dirname, '../../node_modules/@mdi/svg/svg');
const DEMO = path.resolve(__dirname, '../../media/demo');

const icons = readdirSync(ICONS)
  .filter((_, i) => i % 150 === 0)
  .map((file) => readFileSync(path.join(ICONS, file), 'utf8'));
const demo = ['sun.svg', 'numeral-post.svg'].map((file) => readFileSync(path.join(DEMO, file), 'utf8'));
const seeds = [...icons, ...demo];

function stirred(random: () => number): string {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  let text = random() < 0.1 ? '' : pick(seeds);
  for (let changes = 1 + Math.floor(random() * 5); changes > 0; changes -= 1) {
    const at = Math.floor(random() * (text.length + 1));
    const end = Math.min(text.length, at + Math.floor(random() * 40));
    const ways = [
      () => text.slice(0, at),
      () => text.slice(at),
      () => text.slice(0, at) + pick(PIECES) + text.slice(at),
      () => text.slice(0, at) + text.slice(end),
      () => text.slice(0, end) + text.slice(at),
      () => text.slice(0, at) + pick(PIECES) + text.slice(end),
    ];
    text = pick(ways)();
  }
  return text;
}

function misplaced(text: string): string[] {
  return check(text, { budget: BUDGET / 2 }).findings.flatMap(({ check: id, span, related }) =>
    [span, ...related.map((each) => each.span)]
      .filter(({ from, to }) => !(from >= 0 && from <= to && to <= text.length))
      .map(({ from, to }) => `${id} at ${from}..${to} of ${text.length}`),
  );
}

test(`gives a report for each of ${DOCUMENTS} stirred documents`, () => {
  const random = seededRandom(20261125);
  const failures: string[] = [];
  let slowest = 0;
  for (let i = 0; i < DOCUMENTS; i += 1) {
    const text = stirred(random);
    const start = performance.now();
    try {
      failures.push(...misplaced(text).map((line) => `document ${i}: ${line}`));
    } catch (error) {
      failures.push(`document ${i}: ${String(error)}\n${text.slice(0, 400)}`);
    }
    const took = performance.now() - start;
    slowest = Math.max(slowest, took);
    if (took > BUDGET) failures.push(`document ${i}: ${took.toFixed(0)} ms\n${text.slice(0, 400)}`);
  }
  console.log(`${DOCUMENTS} documents, slowest ${slowest.toFixed(0)} ms, ${failures.length} failures`);
  expect(failures.slice(0, 5)).toEqual([]);
});
