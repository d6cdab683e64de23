/**
 * Source: SVG 2, implementation notes "Conversion from endpoint to center parameterization" and "Correction of
 * out-of-range radii" (https://www.w3.org/TR/SVG2/implnote.html#ArcImplementationNotes), and its example files
 * arcs01.svg and arcs02.svg. Numbers reckoned with those formulas.
 */
import { describe, expect, it } from 'vitest';
import { arcFromEndpoints } from '../../src/drawing/outline/arc';
import { lengthOf } from '../../src/geometry/curve/index';
import { drawMm } from '../drawing/draw';

interface Case {
  readonly start?: readonly [number, number];
  readonly radii: readonly [number, number];
  readonly rotation?: number;
  readonly flags: readonly [number, number];
  readonly by: readonly [number, number];
}

function arcOf({ start = [0, 0], radii, rotation = 0, flags, by }: Case): ReturnType<typeof arcFromEndpoints> {
  return arcFromEndpoints({
    start: { x: start[0], y: start[1] },
    end: { x: start[0] + by[0], y: start[1] + by[1] },
    radiusX: radii[0],
    radiusY: radii[1],
    rotation,
    large: flags[0] === 1,
    sweep: flags[1] === 1,
  });
}

function centreForm(item: Case): { centre: number[]; radii: number[]; sweep: number } {
  const arc = arcOf(item);
  if (arc?.kind !== 'arc') throw new Error('no arc');
  const { centre, axisU, axisV, sweep } = arc;
  return {
    centre: [centre.x, centre.y],
    radii: [Math.hypot(axisU.x, axisU.y), Math.hypot(axisV.x, axisV.y)],
    sweep: (sweep * 180) / Math.PI,
  };
}

describe('arcs02.svg: M125,75 a100,50 0 f,f 100,50', () => {
  it.each([
    [[0, 0], [225, 75], -90],
    [[0, 1], [125, 125], 90],
    [[1, 0], [125, 125], -270],
    [[1, 1], [225, 75], 270],
  ] as const)('flags %j', (flags, centre, sweep) => {
    const form = centreForm({ start: [125, 75], radii: [100, 50], flags, by: [100, 50] });
    expect(form.centre[0]).toBeCloseTo(centre[0], 9);
    expect(form.centre[1]).toBeCloseTo(centre[1], 9);
    expect(form.sweep).toBeCloseTo(sweep, 9);
  });
});

describe('arcs01.svg: every blip is out of range', () => {
  it.each([
    [25, [27.95085, 27.95085], [675, 312.5]],
    [50, [27.9132, 55.82639], [775, 262.5]],
    [75, [27.90622, 83.71866], [875, 212.5]],
    [100, [27.90378, 111.6151], [975, 162.5]],
  ] as const)('a25,%d -30 0,1 50,-25', (radiusY, radii, centre) => {
    const start = [centre[0] - 25, centre[1] + 12.5] as const;
    const form = centreForm({ start, radii: [25, radiusY], rotation: -30, flags: [0, 1], by: [50, -25] });
    expect(form.radii[0]).toBeCloseTo(radii[0], 4);
    expect(form.radii[1]).toBeCloseTo(radii[1], 3);
    expect(form.centre[0]).toBeCloseTo(centre[0], 9);
    expect(form.centre[1]).toBeCloseTo(centre[1], 9);
    expect(form.sweep).toBeCloseTo(180, 9);
  });
});

describe('out-of-range parameters', () => {
  it('M0,0 A10,5 0 0,1 40,0 grows to 20 × 10 about (20,0), length 48.442241', () => {
    const item: Case = { radii: [10, 5], flags: [0, 1], by: [40, 0] };
    const form = centreForm(item);
    expect(form.radii[0]).toBeCloseTo(20, 9);
    expect(form.radii[1]).toBeCloseTo(10, 9);
    expect(form.centre[0]).toBeCloseTo(20, 9);
    expect(form.sweep).toBeCloseTo(180, 9);
    expect(lengthOf(arcOf(item)!)).toBeCloseTo(48.442241, 5);
  });

  it('a zero radius is a straight line, equal ends are nothing, signs of radii are dropped', () => {
    expect(arcOf({ radii: [0, 5], flags: [0, 1], by: [40, 0] })?.kind).toBe('line');
    expect(arcOf({ radii: [5, 5], flags: [0, 1], by: [0, 0] })).toBeUndefined();
    expect(centreForm({ radii: [-10, -5], flags: [0, 1], by: [10, 2] })).toEqual(
      centreForm({ radii: [10, 5], flags: [0, 1], by: [10, 2] }),
    );
  });

  it('in a path: the arc ends where it is told to, exactly', () => {
    const drawing = drawMm('<path d="M10 20 A 30 10 27 1 0 40.3 50.7"/>');
    expect(drawing.shapes[0]?.subpaths[0]?.curves[0]?.end).toEqual({ x: 40.3, y: 50.7 });
  });
});
