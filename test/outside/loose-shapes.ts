/** Fifty loose parts of a sheet, each with its root on the line x = 0: heads on stalks, hooks, tapers, several necks. */
import type { Ring } from '../../src/geometry/base/polygon-types';
import { ringContains, ringOfPoints, signedArea } from '../../src/geometry/base/ring';

export interface LooseShape {
  readonly name: string;
  /** From one end of the root round to the other, turning so that its area is positive. */
  readonly outline: Ring;
  readonly holes: readonly Ring[];
  /** Lines of a grid that meet the shape's straight edges. */
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly isSolid: (x: number, y: number) => boolean;
  readonly isClamped: (x: number, y: number) => boolean;
}

type Corner = readonly [number, number];

/** Where the grid must have lines besides the shape's extremes, how fine it is at most, and what is cut out. */
interface Details {
  readonly x?: readonly number[];
  readonly y?: readonly number[];
  readonly step?: number;
  readonly holes?: readonly (readonly Corner[])[];
}

/** @param corners of the lower end of the root first, of the upper one last */
function shape(
  name: string,
  corners: readonly Corner[],
  { x = [], y = [], step = 0.5, holes = [] }: Details = {},
): LooseShape {
  const ring = ringOf(corners);
  const outline = signedArea(ring) > 0 ? ring : ringOf([...corners].reverse());
  const cut = holes.map(ringOf);
  const [xs, ys] = [corners.map((corner) => corner[0]), corners.map((corner) => corner[1])];
  const ends = [corners[0]![1], corners.at(-1)![1]];
  return {
    name,
    outline,
    holes: cut,
    x: lines([Math.min(...xs), 0, Math.max(...xs), ...x], step),
    y: lines([Math.min(...ys), Math.max(...ys), ...ends, ...y], step),
    isSolid: (px, py) =>
      ringContains(outline, { x: px, y: py }) && !cut.some((hole) => ringContains(hole, { x: px, y: py })),
    isClamped: (px, py) => Math.abs(px) < 1e-9 && py > Math.min(...ends) - 1e-9 && py < Math.max(...ends) + 1e-9,
  };
}

function ringOf(corners: readonly Corner[]): Ring {
  return ringOfPoints(corners.map(([x, y]) => ({ x, y })));
}

function lines(breaks: readonly number[], step: number): number[] {
  const sorted = [...new Set(breaks)].sort((a, b) => a - b);
  return sorted.flatMap((from, i) => {
    const to = sorted[i + 1];
    if (to === undefined) return [from];
    const count = Math.ceil((to - from) / step);
    return Array.from({ length: count }, (_, k) => from + ((to - from) * k) / count);
  });
}

/** A straight part whose width changes evenly. */
function wedge(length: number, root: number, end: number, step = 0.4): LooseShape {
  const corners: Corner[] = [
    [0, -root / 2],
    [length, -end / 2],
    [length, end / 2],
    [0, root / 2],
  ];
  return shape(`${length} long, from ${root} to ${end} wide`, corners, { step });
}

/** An ellipse on a stalk. */
function oval(stalk: number, rx: number, ry: number, width: number): LooseShape {
  const turn = Math.asin(width / 2 / ry);
  const round = Array.from({ length: 161 }, (_, k): Corner => {
    const angle = -Math.PI + turn + ((2 * Math.PI - 2 * turn) * k) / 160;
    return [stalk + rx * Math.cos(turn) + rx * Math.cos(angle), ry * Math.sin(angle)];
  });
  const corners: Corner[] = [[0, -width / 2], ...round, [0, width / 2]];
  return shape(`oval ${rx} by ${ry} on a stalk of ${stalk} by ${width}`, corners, {
    x: [stalk],
    y: [-width / 2, width / 2],
  });
}

/** A rectangle on a stalk in its middle: a T where it is flat, a paddle where it is long; without a stalk where that is 0. */
function paddle(stalk: number, length: number, breadth: number, width: number): LooseShape {
  const [w, b] = [width / 2, breadth / 2];
  const head: Corner[] = [
    [stalk, -b],
    [stalk + length, -b],
    [stalk + length, b],
    [stalk, b],
  ];
  const neck = (y: number): Corner[] => (stalk > 0 ? [[stalk, y]] : []);
  const corners: Corner[] = [[0, -w], ...neck(-w), ...head, ...neck(w), [0, w]];
  return shape(`head ${length} by ${breadth} on ${stalk} by ${width}`, corners, { x: [stalk], y: [-w, w] });
}

/** A stalk that turns aside at its end, and back again where `back` is more than 0. */
function hook(stalk: number, aside: number, arm: number, width: number, back = 0): LooseShape {
  const w = width / 2;
  const end: Corner[] =
    back > 0
      ? [
          [stalk + arm, aside + arm],
          [stalk - back, aside + arm],
          [stalk - back, aside],
          [stalk, aside],
        ]
      : [
          [stalk + arm, aside],
          [stalk, aside],
        ];
  const corners: Corner[] = [[0, -w], [stalk + arm, -w], ...end, [stalk, w], [0, w]];
  return shape(`hook ${stalk}, ${aside} aside, ${back} back`, corners, { x: [stalk], y: [w, aside] });
}

/** A head on two necks side by side, a slot between them. */
function onTwo(neck: number, length: number, breadth: number, width: number, gap: number): LooseShape {
  const [inner, outer, b] = [gap / 2, gap / 2 + width, breadth / 2];
  const corners: Corner[] = [
    [0, -outer],
    [neck, -outer],
    [neck, -b],
    [neck + length, -b],
    [neck + length, b],
    [neck, b],
    [neck, outer],
    [0, outer],
  ];
  const slot: Corner[] = [
    [0, -inner],
    [neck, -inner],
    [neck, inner],
    [0, inner],
  ];
  const details = { x: [neck], y: [-outer, -inner, inner, outer], step: 0.6, holes: [slot] };
  return shape(`head ${length} by ${breadth} on two necks of ${neck} by ${width}, ${gap} apart`, corners, details);
}

/** A frame on a stalk: a head with a hole in it. */
function frame(stalk: number, side: number, rim: number, width: number): LooseShape {
  const [w, b, i] = [width / 2, side / 2, side / 2 - rim];
  const corners: Corner[] = [
    [0, -w],
    [stalk, -w],
    [stalk, -b],
    [stalk + side, -b],
    [stalk + side, b],
    [stalk, b],
    [stalk, w],
    [0, w],
  ];
  const hole: Corner[] = [
    [stalk + rim, -i],
    [stalk + side - rim, -i],
    [stalk + side - rim, i],
    [stalk + rim, i],
  ];
  const details = { x: [stalk, stalk + rim, stalk + side - rim], y: [-w, w, -i, i], holes: [hole] };
  return shape(`frame ${side} with a rim of ${rim} on ${stalk} by ${width}`, corners, details);
}

export const LOOSE_SHAPES: readonly LooseShape[] = [
  ...[wedge(20, 0.5, 0.5, 0.25), wedge(33, 2, 2), wedge(40, 8, 8, 1), wedge(45, 11, 11, 1)],
  ...[wedge(30, 6, 0.4, 0.25), wedge(35, 8, 2), wedge(40, 6, 3), wedge(30, 2, 10), wedge(25, 2, 14), wedge(40, 3, 8)],
  ...[oval(10, 10, 10, 1.5), oval(5, 8, 8, 0.8), oval(20, 6, 6, 2), oval(3, 12, 12, 3), oval(15, 12, 12, 4)],
  ...[
    oval(12, 5, 5, 1),
    oval(8, 20, 5, 1),
    oval(12, 6, 18, 2),
    oval(4, 25, 8, 4),
    oval(10, 15, 6, 1.5),
    oval(6, 8, 14, 2),
  ],
  ...[paddle(12, 4, 24, 1.5), paddle(20, 3, 16, 2), paddle(8, 5, 36, 2), paddle(15, 2, 40, 2), paddle(25, 4, 20, 3)],
  ...[paddle(6, 20, 15, 1), paddle(6, 20, 15, 4), paddle(2, 20, 20, 5), paddle(4, 30, 12, 2), paddle(10, 15, 15, 2)],
  ...[paddle(0, 25, 20, 5), paddle(0, 30, 20, 2), paddle(0, 25, 24, 1)],
  ...[hook(15, 15, 2, 2), hook(20, 10, 3, 1.5), hook(8, 25, 3, 3), hook(25, 12, 2, 2), hook(12, 20, 4, 2)],
  ...[hook(15, 10, 2, 2, 12), hook(20, 6, 2, 2, 18), hook(18, 12, 3, 2, 10), hook(25, 8, 2, 3, 20)],
  ...[onTwo(3, 40, 20, 0.8, 3.4), onTwo(5, 30, 24, 1, 3), onTwo(2, 45, 24, 0.8, 6), onTwo(8, 25, 12, 1, 4)],
  ...[frame(8, 20, 4, 2), frame(12, 16, 5, 1.5), frame(5, 22, 6, 3)],
];
