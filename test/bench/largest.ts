/** Run by itself, so that the peak of its memory is its own: one check of a million segments. Prints JSON. */
import { check } from '../../src/engine';
import { segmentsIn, time } from './measure';
import { blobSheet } from './seeded';

const SMALL = 10_000;
const LARGE = 1_000_000;

export interface Largest {
  readonly small: { readonly segments: number; readonly milliseconds: number };
  readonly large: { readonly segments: number; readonly milliseconds: number };
  /** Of the whole process. */
  readonly peakMegabytes: number;
}

function measure(size: number): Largest['small'] {
  const svg = blobSheet(size);
  if (size === SMALL) return { milliseconds: time(() => check(svg)), segments: segmentsIn(check(svg)) };
  const start = performance.now();
  const report = check(svg, { budget: Infinity });
  return { milliseconds: performance.now() - start, segments: segmentsIn(report) };
}

const [small, large] = [measure(SMALL), measure(LARGE)];
const result: Largest = { small, large, peakMegabytes: process.resourceUsage().maxRSS / 1024 };
console.log(JSON.stringify(result));
