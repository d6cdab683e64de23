/** A sheet measured after an edit, with what was known before, is the sheet measured anew. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/engine/check/check-file';
import type { Report, Settings } from '../../src/report/report';
import type { ThinPlace } from '../../src/sheet/thin-places';
import { cases } from '../thorough';

/** A shape on a grid so tight that neighbours come within the limits, or touch, or overlap. */
interface Placed {
  readonly column: number;
  readonly row: number;
  readonly kind: 'rect' | 'circle' | 'ring' | 'hook' | 'sliver' | 'bow' | 'open';
  readonly size: number;
  readonly turn: number;
}

const PITCH = 8;

const placed: fc.Arbitrary<Placed> = fc.record({
  column: fc.integer({ min: 0, max: 5 }),
  row: fc.integer({ min: 0, max: 5 }),
  kind: fc.constantFrom('rect', 'circle', 'ring', 'hook', 'sliver', 'bow', 'open'),
  // Now and then neighbours touch at corners, or along an edge.
  size: fc.oneof(fc.double({ min: 3, max: 8.2, noNaN: true }), fc.constant(PITCH)),
  turn: fc.oneof(fc.double({ min: 0, max: 90, noNaN: true }), fc.constant(0)),
});

function draw({ column, row, kind, size, turn }: Placed): string {
  const half = size / 2;
  const inner = half - 0.9;
  const outlines: Record<Placed['kind'], string> = {
    rect: `M${-half} ${-half}H${half}V${half}H${-half}Z`,
    circle: `M${half} 0A${half} ${half} 0 1 1 ${-half} 0A${half} ${half} 0 1 1 ${half} 0Z`,
    ring:
      `M${half} 0A${half} ${half} 0 1 1 ${-half} 0A${half} ${half} 0 1 1 ${half} 0Z` +
      `M${inner} 0A${inner} ${inner} 0 1 1 ${-inner} 0A${inner} ${inner} 0 1 1 ${inner} 0Z`,
    hook:
      `M${-half} ${-half}H${half}V-0.2H${inner}V${-inner}H${-inner}` +
      `V${inner}H${inner}V0.2H${half}V${half}H${-half}Z`,
    bow: `M${-half} ${-half}L${half} ${half}V${-half}L${-half} ${half}Z`,
    open: `M${-half} ${-half}H${half}V${half}`,
    sliver: `M${-half} -0.2L${half} -0.2L${half} 0.2L${-half} 0.3Z`,
  };
  const [x, y] = [(column + 1) * PITCH, (row + 1) * PITCH];
  return `<path fill-rule="evenodd" transform="translate(${x} ${y}) rotate(${turn})" d="${outlines[kind]}"/>`;
}

const side = 7 * PITCH;
const sheet = (shapes: readonly Placed[], reading: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${side}mm" height="${side}mm" viewBox="0 0 ${side} ${side}" ` +
  `${reading === 'outlines' ? 'fill="none" stroke="#000" stroke-width="0.1"' : ''} data-tombolo-reading="${reading}">` +
  `${shapes.map(draw).join('\n')}</svg>`;

const fixed = (value: number) => Number(value.toFixed(6)) + 0;

function partFacts({ kind, drawnWidth, cutWidth, from, to, length, reach, sides, polygon, holds }: ThinPlace) {
  const ends = [from, to].map(({ x, y }) => `${x.toFixed(5)} ${y.toFixed(5)}`).sort();
  return JSON.stringify([
    polygon,
    kind,
    ends,
    fixed(drawnWidth),
    fixed(cutWidth),
    fixed(length),
    fixed(reach),
    sides,
    holds && fixed(holds.area),
  ]);
}

function facts({ sheets, complete }: Report) {
  return {
    sheets: sheets.map(({ openings, material, pieces, thinMaterial, thinOpenings, tongues, cutLength }) => ({
      openings,
      material,
      tongues,
      cutLength,
      pieces: pieces.map(({ polygon, area, island, label }) => ({ polygon, area, island, label })),
      thinMaterial: thinMaterial.map(partFacts).sort(),
      thinOpenings: thinOpenings.map(partFacts).sort(),
    })),
    findings: complete
      .map(({ check: id, severity, message, span }) => JSON.stringify([id, severity, message, span]))
      .sort(),
  };
}

const edit = fc.oneof(
  fc.record({ kind: fc.constant('replace' as const), at: fc.nat(), by: placed }),
  fc.record({ kind: fc.constant('remove' as const), at: fc.nat(), by: placed }),
  fc.record({ kind: fc.constant('add' as const), at: fc.nat(), by: placed }),
);

function apply(shapes: readonly Placed[], { kind, at, by }: { kind: string; at: number; by: Placed }): Placed[] {
  const place = at % Math.max(1, shapes.length);
  if (kind === 'add') return shapes.toSpliced(place, 0, by);
  return kind === 'remove' ? shapes.toSpliced(place, 1) : shapes.toSpliced(place, 1, by);
}

describe('a sheet measured with what was known before', () => {
  it.each<[string, string, Settings]>([
    ['as drawn', 'openings', {}],
    ['with a kerf', 'openings', { kerf: 0.15 }],
    ['as the sheet that stays', 'sheet', {}],
    ['as cut lines', 'outlines', {}],
  ])(
    'is the sheet measured anew, edit after edit, %s',
    (_, reading, settings) => {
      const runs = fc.tuple(fc.array(placed, { maxLength: 30 }), fc.array(edit, { minLength: 1, maxLength: 4 }));
      fc.assert(
        fc.property(runs, ([start, edits]) => {
          let shapes: readonly Placed[] = start;
          let report = check(sheet(shapes, reading), settings);
          for (const each of edits) {
            shapes = apply(shapes, each);
            const text = sheet(shapes, reading);
            report = check(text, settings, report);
            expect(facts(report)).toEqual(facts(check(text, settings)));
          }
        }),
        { numRuns: cases(50, 12) },
      );
    },
    120_000,
  );
});
