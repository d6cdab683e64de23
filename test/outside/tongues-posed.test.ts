/** Icons of an open set (@mdi/svg, Apache-2.0), mirrored and turned: the same tongues lift, and as far. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it as test } from 'vitest';
import { check } from '../../src/engine/check/check-file';
import { DEFLECTION_LIMIT } from '../../src/sheet/deflection';

const FOLDER = path.resolve(__dirname, '../../node_modules/@mdi/svg/svg');
const files = readdirSync(FOLDER).filter((_, i) => i % 50 === 7);

/** What is nearer to the limit than this share may fall on either side of it; so much may lifts differ. */
const TOLERANCE = 0.02;

/** mm, the least first; what lifts by more than a tenth of its reach is told as "over" that. */
function liftsIn(svg: string, pose: string): number[] {
  const posed = svg
    .replace('viewBox="0 0 24 24"', 'viewBox="-6 -6 36 36"')
    .replace('<path', `<g transform="${pose}"><path`)
    .replace('</svg>', '</g></svg>');
  const [sheet] = check(posed, { width: 150, oneLayer: true }).sheets;
  const told = sheet?.tongues.map(({ lift, reach }) => Math.min(lift, reach / 10)) ?? [];
  return told.filter((lift) => lift > DEFLECTION_LIMIT * (1 + TOLERANCE)).sort((a, b) => a - b);
}

test.each([
  ['mirrored', 'matrix(-1 0 0 1 24 0)'],
  ['upside down', 'matrix(1 0 0 -1 0 24)'],
  ['turned by 37°', 'rotate(37 12 12)'],
])(
  '%s',
  (_, pose) => {
    const unlike: string[] = [];
    let found = 0;
    for (const file of files) {
      const svg = readFileSync(path.join(FOLDER, file), 'utf8');
      const [plain, posed] = [liftsIn(svg, ''), liftsIn(svg, pose)];
      found += plain.length;
      const alike =
        plain.length === posed.length && plain.every((lift, i) => Math.abs(lift / (posed[i] ?? 0) - 1) < TOLERANCE);
      if (!alike) unlike.push(`${file}: ${plain.join(', ')} is not ${posed.join(', ')}`);
    }
    expect(unlike).toEqual([]);
    expect(files.length).toBeGreaterThan(140);
    expect(found).toBeGreaterThan(10);
  },
  300_000,
);
