import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import * as tolerances from '../../../src/geometry/base/tolerances';

const SRC = path.resolve(__dirname, '../../../src');
const FILE = path.join(SRC, 'geometry/base/tolerances.ts');

/** Areas and a share, whose comments only explain themselves in mm. */
const NO_DISTANCES: readonly string[] = [
  'sheet/cut-lines/self-intersections.ts: MIN_AREA',
  'edits/strip/clearance.ts: GROWTH',
  'checks/specks.ts: SPECK',
  // The least gain in cost that counts, of sums of doubles.
  'edits/plan/search/select.ts: GAIN',
];

describe('the error budget', () => {
  const quantities = new Map<string, number>(Object.entries(tolerances));
  const rows = [...readFileSync(FILE, 'utf8').matchAll(/^ \* \| ([A-Z_]+) \| ([\d.e-]+)/gm)];

  it('has each quantity in its table, with its value', () => {
    expect(rows.map(([, name]) => name).sort()).toEqual(Object.keys(tolerances).sort());
    for (const [, name, value] of rows) {
      const actual = quantities.get(name!)!;
      expect(Math.abs(actual / Number(value) - 1), name).toBeLessThan(1e-12);
    }
  });

  it('keeps what is promised: edges within 5 µm of what was drawn, and necks known to 0.01 mm', () => {
    const { FLATTENING, OVERLAY_GRID, STROKE_OUTLINE, NECK_MARGIN, DRAWN_ALIKE, MEANT_TO_MEET } = tolerances;
    const edge = FLATTENING + STROKE_OUTLINE + OVERLAY_GRID;
    expect(edge).toBeLessThan(0.005);
    expect(NECK_MARGIN).toBeGreaterThan(2 * edge);
    expect(NECK_MARGIN).toBeLessThan(DRAWN_ALIKE);
    expect(MEANT_TO_MEET).toBeGreaterThan(2 * edge);
  });

  it('tells every step of it from the next finer one', () => {
    const ladder = ['TIE', 'ROUNDING_DEPTH', 'NO_WIDTH', 'SAME_POINT', 'OVERLAY_GRID', 'TOUCHING'] as const;
    const values = ladder.map((name) => quantities.get(name)!);
    expect(values).toEqual(values.slice().sort((a, b) => a - b));
    expect(new Set(values).size).toBe(values.length);
  });

  it('is where all distances in mm come from that are less than a tenth', () => {
    const rooms = ['geometry', 'drawing', 'sheet', 'stack', 'edits', 'engine', 'checks', 'server', 'picture'];
    const files = rooms.flatMap((room) =>
      readdirSync(path.join(SRC, room), { recursive: true, encoding: 'utf8' }).map((file) => `${room}/${file}`),
    );
    const constant = /\/\*\*((?:(?!\*\/)[\s\S])*?)\*\/\n(?:export )?const ([A-Z_]+) = ([\d._e-]+);/g;
    const own = files
      .filter((file) => file.endsWith('.ts') && path.join(SRC, file) !== FILE)
      .flatMap((file) =>
        [...readFileSync(path.join(SRC, file), 'utf8').matchAll(constant)]
          .filter(([, says, , value]) => /\bmm\b(?!²)/i.test(says ?? '') && Number(value) < 0.1)
          .map(([, , name]) => `${file}: ${name}`),
      );
    expect(own.filter((each) => !NO_DISTANCES.includes(each))).toEqual([]);
  });
});
