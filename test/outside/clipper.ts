/** Regions by clipper-lib 6.4.2 (Vatti's algorithm), as a second way beside our own overlay. Millimetres. */
import { createRequire } from 'node:module';

export type Point = readonly [number, number];
export type Rings = readonly (readonly Point[])[];

interface IntPoint {
  readonly X: number;
  readonly Y: number;
}
type Paths = IntPoint[][];

interface ClipperLibrary {
  readonly Clipper: {
    new (): {
      AddPaths(paths: Paths, type: number, closed: boolean): void;
      Execute(clip: number, solution: Paths, subject: number, other: number): boolean;
    };
    Area(path: IntPoint[]): number;
  };
  readonly ClipperOffset: {
    new (
      miterLimit: number,
      arcTolerance: number,
    ): { AddPaths(paths: Paths, join: number, end: number): void; Execute(solution: Paths, delta: number): void };
  };
  readonly ClipType: { readonly ctUnion: number; readonly ctDifference: number; readonly ctIntersection: number };
  readonly PolyType: { readonly ptSubject: number; readonly ptClip: number };
  readonly PolyFillType: { readonly pftNonZero: number; readonly pftEvenOdd: number };
  readonly JoinType: { readonly jtRound: number };
  readonly EndType: { readonly etClosedPolygon: number };
  readonly Paths: new () => Paths;
}

const library = createRequire(import.meta.url)('clipper-lib') as ClipperLibrary;

/** Fine enough that rounding takes no part in what is compared: 0.01 µm. */
const UNITS = 1e5;

const toPaths = (rings: Rings): Paths =>
  rings.map((ring) => ring.map(([x, y]) => ({ X: Math.round(x * UNITS), Y: Math.round(y * UNITS) })));
const fromPaths = (paths: Paths): Rings => paths.map((path) => path.map(({ X, Y }): Point => [X / UNITS, Y / UNITS]));

function combine(subject: Rings, clip: Rings, operation: number): Rings {
  const engine = new library.Clipper();
  engine.AddPaths(toPaths(subject), library.PolyType.ptSubject, true);
  engine.AddPaths(toPaths(clip), library.PolyType.ptClip, true);
  const solution = new library.Paths();
  const { pftNonZero } = library.PolyFillType;
  engine.Execute(operation, solution, pftNonZero, pftNonZero);
  return fromPaths(solution);
}

export const united = (a: Rings, b: Rings = []): Rings => combine(a, b, library.ClipType.ctUnion);
export const without = (a: Rings, b: Rings): Rings => combine(a, b, library.ClipType.ctDifference);

/** @param delta mm, outwards where it is more than nothing; round joins */
export function grown(rings: Rings, delta: number): Rings {
  const engine = new library.ClipperOffset(2, 0.0005 * UNITS);
  engine.AddPaths(toPaths(rings), library.JoinType.jtRound, library.EndType.etClosedPolygon);
  const solution = new library.Paths();
  engine.Execute(solution, delta * UNITS);
  return fromPaths(solution);
}

export const shifted = (rings: Rings, dx: number, dy: number): Rings =>
  rings.map((ring) => ring.map(([x, y]): Point => [x + dx, y + dy]));

/** mm², holes taken away. */
export const areaOf = (rings: Rings): number =>
  toPaths(rings).reduce((sum, path) => sum + library.Clipper.Area(path), 0) / UNITS ** 2;

/** How many pieces, each with its outer ring. */
export const piecesIn = (rings: Rings): number =>
  toPaths(rings).filter((path) => library.Clipper.Area(path) > 0).length;
