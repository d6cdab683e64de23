/**
 * The same curves, written with other commands: cut in two anywhere, or arcs as cubics. Flattening sets its points
 * along each command, so that edges move by up to the flatness; what is found must not depend on it.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/checks/finding';
import { check } from '../../src/engine/index';
import type { Cubic, Curve, Point } from '../../src/geometry/base/curve-types';
import { pointAt, splitCurve } from '../../src/geometry/curve/index';
import { arcFrom } from '../geometry/arbitraries';
import { cases } from '../thorough';

/** mm: two edges face each other, each of which moves by the flatness of 0.7 µm and the grid's 0.05 µm at most. */
const BAND = 0.002;

/** mm: thin parts are reported from so much under the limit on, so a finding may come or go there only. */
const TOLERANCE = 0.006;

/** mm: where an outline crosses itself at an acute angle, what lies between its sides is thinner than can be told. */
const SLIVER = 0.02;

/** mm: between two bows the narrowest place is flat, so it moves farther than the width does. */
const PLACE = 0.4;

const MEASURED = ['thin-bridge', 'narrow-opening', 'small-opening', 'edge-opening', 'floating-island', 'loose-tongue'];

/** As good as the arc: an eighth of a turn errs by 4e-6 of the radius, less than 0.02 µm here. */
function eighth({ x, y }: Point, radius: number, from: number, sweep: number): Cubic {
  const at = (angle: number) => ({ x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) });
  const handle = (4 / 3) * Math.tan(sweep / 4) * radius;
  const [start, end] = [at(from), at(from + sweep)];
  return {
    kind: 'cubic',
    start,
    end,
    control1: { x: start.x - handle * Math.sin(from), y: start.y + handle * Math.cos(from) },
    control2: { x: end.x + handle * Math.sin(from + sweep), y: end.y - handle * Math.cos(from + sweep) },
  };
}

function disc(centre: Point, radius: number, sign: number, asArcs: boolean): Curve[] {
  const sweep = (sign * Math.PI) / 4;
  return Array.from({ length: 8 }, (_, i) =>
    asArcs
      ? arcFrom(centre, { x: radius, y: 0 }, { x: 0, y: radius }, i * sweep, sweep)
      : eighth(centre, radius, i * sweep, sweep),
  );
}

/** Round the centre, its radius now this, now that: with waists, bays and points. */
function blob({ x, y }: Point, radii: readonly number[]): Cubic[] {
  const knots = radii.map((r, i) => {
    const angle = (2 * Math.PI * i) / radii.length;
    return { x: x + r * Math.cos(angle), y: y + r * Math.sin(angle) };
  });
  const knot = (i: number) => knots[(i + knots.length) % knots.length] as Point;
  const along = (i: number, step: number) => ({
    x: knot(i).x + (step * (knot(i + 1).x - knot(i - 1).x)) / 6,
    y: knot(i).y + (step * (knot(i + 1).y - knot(i - 1).y)) / 6,
  });
  return knots.map((start, i) => ({
    kind: 'cubic',
    start,
    control1: along(i, 1),
    control2: along(i + 1, -1),
    end: knot(i + 1),
  }));
}

const number = (value: number) => value.toFixed(9);
const place = ({ x, y }: Point) => `${number(x)} ${number(y)}`;

function command(curve: Curve): string {
  switch (curve.kind) {
    case 'line':
      return `L${place(curve.end)}`;
    case 'quadratic':
      return `Q${place(curve.control)} ${place(curve.end)}`;
    case 'cubic':
      return `C${place(curve.control1)} ${place(curve.control2)} ${place(curve.end)}`;
    case 'arc': {
      const radius = Math.hypot(curve.axisU.x, curve.axisU.y);
      return `A${number(radius)} ${number(radius)} 0 0 ${curve.sweep > 0 ? 1 : 0} ${place(curve.end)}`;
    }
  }
}

const chain = (curves: readonly Curve[]) => `M${place(pointAt(curves[0] as Curve, 0))}${curves.map(command).join('')}Z`;

const SIDE = 40;
const sheet = (shapes: readonly (readonly Curve[])[]) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}mm" height="${SIDE}mm" viewBox="0 0 ${SIDE} ${SIDE}" ` +
  `data-tombolo-reading="openings" fill-rule="evenodd"><path d="${shapes.map(chain).join('')}"/></svg>`;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
interface Cell {
  readonly kind: string;
  readonly radius: number;
  readonly inner: number;
  readonly radii: readonly number[];
  readonly dx: number;
  readonly dy: number;
}

const cell: fc.Arbitrary<Cell> = fc.record({
  kind: fc.constantFrom('disc', 'ring', 'blob'),
  radius: between(2.4, 3.7),
  inner: between(0.2, 1),
  radii: fc.array(between(0.3, 3.6), { minLength: 7, maxLength: 7 }),
  dx: between(-0.3, 0.3),
  dy: between(-0.3, 0.3),
});

function outlinesOf(cells: readonly Cell[], asArcs: boolean): Curve[][] {
  return cells.flatMap(({ kind, radius, inner, radii, dx, dy }, i) => {
    const centre = { x: 4.3 + 7.8 * (i % 5) + dx, y: 4.3 + 7.8 * Math.floor(i / 5) + dy };
    if (kind === 'blob') return [blob(centre, radii)];
    const outer = disc(centre, radius, 1, asArcs);
    return kind === 'disc' ? [outer] : [outer, disc(centre, radius - inner, -1, asArcs)];
  });
}

const measured = (text: string) => check(text).complete.filter((finding) => MEASURED.includes(finding.check));

/** Whether rounding may decide if it is found: at the limit, or where there is hardly anything to be found. */
function isAtLimit({ measure }: Finding): boolean {
  return (
    measure !== undefined &&
    measure.limit > 0 &&
    (measure.value < SLIVER || [0, TOLERANCE].some((below) => Math.abs(measure.value - (measure.limit - below)) < BAND))
  );
}

function isSame(a: Finding, b: Finding): boolean {
  const [one, other] = [a.measure?.value ?? 0, b.measure?.value ?? 0];
  const band = a.measure?.unit === 'mm²' ? 1e-3 * (1 + one) : BAND;
  // A ring is as wide all round: any place in it is its widest.
  const apart =
    a.check === 'small-opening' ? 0 : Math.hypot((a.at?.x ?? 0) - (b.at?.x ?? 0), (a.at?.y ?? 0) - (b.at?.y ?? 0));
  return a.check === b.check && a.severity === b.severity && Math.abs(one - other) < band && apart < PLACE;
}

/** What only the one text has. */
function lost(from: readonly Finding[], to: readonly Finding[]): string[] {
  const left = [...to];
  return from.flatMap((finding) => {
    const twin = left.findIndex((other) => isSame(finding, other));
    if (twin >= 0) left.splice(twin, 1);
    const told = `${finding.check} at ${JSON.stringify(finding.at)}: ${finding.message}`;
    return twin >= 0 || isAtLimit(finding) ? [] : [told];
  });
}

describe('curves that are written with other commands', () => {
  const cells25 = fc.array(cell, { minLength: 25, maxLength: 25 });
  const run = fc.tuple(cells25, fc.array(between(0.05, 0.95), { minLength: 40 }));
  it.each([
    ['cut in two anywhere', true],
    ['arcs as cubics, cut in two', false],
  ])('%s: give the same findings', (_, asArcs) => {
    let compared = 0;
    fc.assert(
      fc.property(run, ([cells, cuts]) => {
        const before = measured(sheet(outlinesOf(cells, true)));
        const cut = outlinesOf(cells, asArcs).map((curves) =>
          curves.flatMap((curve, i) => splitCurve(curve, cuts[i % cuts.length] as number)),
        );
        const after = measured(sheet(cut));
        compared += before.length;
        expect([lost(before, after), lost(after, before)]).toEqual([[], []]);
      }),
      { numRuns: cases(20, 6), seed: 2026, endOnFailure: true },
    );
    expect(compared).toBeGreaterThan(cases(300, 90));
  });
});
