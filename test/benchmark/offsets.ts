/** Run by itself: a check beside offsetting in and out, in polygon libraries, at the same limits. */

import { limitsOf } from '../../src/config/limits';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { check } from '../../src/engine/index';
import { segmentsIn, time } from './measure';
import { openWithClipper2, openWithJsts } from './offset-ways';
import { blobSheet, tracedSheet } from './seeded';

const SEGMENTS = 100_000;
const SHEETS = { traced: tracedSheet, smooth: blobSheet };

async function compareOffsets(what: keyof typeof SHEETS): Promise<void> {
  const svg = SHEETS[what](SEGMENTS);
  const report = check(svg);
  const { bridge, opening } = limitsOf(DEFAULT_CONFIG);
  const parts = report.sheets.flatMap(({ material, openings }) => [
    { region: material, least: bridge },
    { region: openings, least: opening },
  ]);
  const full = time(() => check(svg));
  console.log(`${(segmentsIn(report) / 1000).toFixed(0)}k segments of ${what} shapes: check ${full.toFixed(0)} ms`);
  const ways = [
    ['clipper2-wasm', () => openWithClipper2(parts, false)],
    ['clipper2-wasm, simplified between', () => openWithClipper2(parts, true)],
    ['jsts', () => openWithJsts(parts)],
  ] as const;
  for (const [name, run] of ways) {
    const { offsets, difference, failure } = await run();
    const ms = difference.toFixed(0);
    const thinParts = failure ? `no difference after ${ms} ms: ${failure}` : `difference ${ms} ms`;
    console.log(
      `  in and out with ${name} ${offsets.toFixed(0)} ms, check/offsets ${(full / offsets).toFixed(3)}; ` +
        `${thinParts}, check/all ${(full / (offsets + difference)).toFixed(3)}`,
    );
  }
}

await compareOffsets(process.argv[2] as keyof typeof SHEETS);
