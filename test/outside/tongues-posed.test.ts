/** Icons of an open set (@mdi/svg, Apache-2.0), mirrored and turned: the same tongues lift, and as far. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, expect, it as test } from 'vitest';
import { check } from '../../src/engine/check/check-file';
import { DEFLECTION_LIMIT } from '../../src/sheet/deflection';
import { cases } from '../thorough';

const FOLDER = path.resolve(__dirname, '../../node_modules/@mdi/svg/svg');
const files = readdirSync(FOLDER).filter((_, i) => i % cases(50, 250) === 7);

/** What is nearer to the limit than this share may fall on either side of it; so much may lifts differ. */
const TOLERANCE = 0.02;

/** mm: a root narrower than this is a contact in a point, which is no hold: whether it holds is another question. */
const CONTACT = 0.02;

interface Posed {
  /** mm, the least first; what lifts by more than a tenth of its reach is told as "over" that. */
  readonly lifts: readonly number[];
  readonly touches: boolean;
}

function tonguesIn(svg: string, pose: string): Posed {
  const posed = svg
    .replace('viewBox="0 0 24 24"', 'viewBox="-6 -6 36 36"')
    .replace('<path', `<g transform="${pose}"><path`)
    .replace('</svg>', '</g></svg>');
  const tongues = check(posed, { width: 150, oneLayer: true }).sheets[0]?.tongues ?? [];
  const told = tongues.map(({ lift, reach }) => Math.min(lift, reach / 10));
  const clear = told.filter((lift) => lift > DEFLECTION_LIMIT * (1 + TOLERANCE));
  return { lifts: clear.sort((a, b) => a - b), touches: tongues.some(({ root }) => root < CONTACT) };
}

const drawings = files.map((file) => ({ file, svg: readFileSync(path.join(FOLDER, file), 'utf8') }));
let asDrawn: Map<string, Posed>;
beforeAll(() => {
  asDrawn = new Map(drawings.map(({ file, svg }) => [file, tonguesIn(svg, '')]));
}, 60_000);

test.each([
  ['mirrored', 'matrix(-1 0 0 1 24 0)'],
  ['upside down', 'matrix(1 0 0 -1 0 24)'],
  ['turned by 37°', 'rotate(37 12 12)'],
])(
  '%s',
  (_, pose) => {
    const unlike: string[] = [];
    let [found, touching] = [0, 0];
    for (const { file, svg } of drawings) {
      const [plain, posed] = [asDrawn.get(file)!, tonguesIn(svg, pose)];
      if (plain.touches || posed.touches) {
        touching += 1;
        continue;
      }
      found += plain.lifts.length;
      const isAlike =
        plain.lifts.length === posed.lifts.length &&
        plain.lifts.every((lift, i) => Math.abs(lift / (posed.lifts[i] ?? 0) - 1) < TOLERANCE);
      if (!isAlike) unlike.push(`${file}: ${plain.lifts.join(', ')} is not ${posed.lifts.join(', ')}`);
    }
    expect(unlike).toEqual([]);
    expect(files.length).toBeGreaterThan(cases(140, 28));
    expect(found).toBeGreaterThanOrEqual(cases(8, 1));
    expect(touching).toBeLessThan(3);
  },
  300_000,
);
