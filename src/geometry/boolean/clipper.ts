/**
 * The one door to the polygon clipping library (clipper2-ts): rings in mm go in, rings in mm come out. Outer rings come
 * back with positive area, holes with negative. Offsets are the library's task; its booleans are only the second
 * resort, as they lose or double area where several edges pass through one vertex (measured; Clipper2 issue 722).
 */

import type { Paths64 } from 'clipper2-ts';
import { Clipper64, FillRule as ClipperFillRule, ClipperOffset, ClipType, EndType, JoinType } from 'clipper2-ts';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { FillRule, Ring } from '../base/polygon-types';
import { fromGrid, toGrid, UNITS_PER_MM } from './grid';

export type Operation = 'union' | 'difference' | 'intersection';
export type Join = 'round' | 'miter' | 'bevel' | 'square';

const CLIP_TYPES = {
  union: ClipType.Union,
  difference: ClipType.Difference,
  intersection: ClipType.Intersection,
} as const;

const JOIN_TYPES = {
  round: JoinType.Round,
  miter: JoinType.Miter,
  bevel: JoinType.Bevel,
  square: JoinType.Square,
} as const;

/** Mitres longer than this many times the offset are cut square. */
const MITRE_LIMIT = 10;

/** Subject and clip rings are each read by the fill rule before they are combined. */
export function clipRings(
  operation: Operation,
  subject: readonly Ring[],
  clip: readonly Ring[],
  fillRule: FillRule,
): Ring[] {
  const engine = new Clipper64();
  engine.addSubject(toPaths(subject, UNITS_PER_MM));
  if (clip.length > 0) engine.addClip(toPaths(clip, UNITS_PER_MM));
  const solution: Paths64 = [];
  const rule = fillRule === 'nonzero' ? ClipperFillRule.NonZero : ClipperFillRule.EvenOdd;
  engine.execute(CLIP_TYPES[operation], rule, solution);
  return toRings(solution, UNITS_PER_MM);
}

/**
 * The rings of one region moved outwards by `delta` mm (inwards when negative). `tolerance` (mm) bounds how far
 * round joins stay from true arcs; `refinement` makes the grid finer than usual by that factor.
 */
export function offsetRings(
  rings: readonly Ring[],
  delta: number,
  join: Join,
  tolerance: number,
  refinement = 1,
): Ring[] {
  const units = UNITS_PER_MM * refinement;
  const engine = new ClipperOffset(MITRE_LIMIT, Math.max(0.25, tolerance * units));
  engine.addPaths(toPaths(rings, units), JOIN_TYPES[join], EndType.Polygon);
  const solution: Paths64 = [];
  engine.execute(delta * units, solution);
  return toRings(solution, units);
}

function toPaths(rings: readonly Ring[], units: number): Paths64 {
  return rings.flatMap((ring) => {
    checkpoint(2 * ring.length);
    const grid = toGrid(ring, units);
    if (grid.length < 6) return [];
    return [
      Array.from({ length: grid.length / 2 }, (_, at) => ({ x: defined(grid[2 * at]), y: defined(grid[2 * at + 1]) })),
    ];
  });
}

function toRings(paths: Paths64, units: number): Ring[] {
  return paths.map((path) => fromGrid(Float64Array.from(path.flatMap((point) => [point.x, point.y])), units));
}
