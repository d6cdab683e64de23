/**
 * The one door to the polygon clipping library (clipper2-ts): rings in mm go in, rings in mm come out, on a grid of
 * integers between them. Outer rings come back with positive area, holes with negative, crossing none.
 */
import { Clipper64, ClipperOffset, ClipType, EndType, FillRule, JoinType } from 'clipper2-ts';
import type { Path64, Paths64 } from 'clipper2-ts';
import type { Ring } from './region';

/** Grid units per mm: the grid is 0.1 µm. */
export const UNITS_PER_MM = 1e4;

/** 1 km, in mm: coordinates beyond it are drawn in, so that the library's integer products stay sound. */
const FARTHEST = 1e6;

export type FillRuleName = 'nonzero' | 'evenodd';
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

/** Subject and clip rings are each read by the fill rule before they are combined. */
export function combineRings(
  operation: keyof typeof CLIP_TYPES,
  subject: readonly Ring[],
  clip: readonly Ring[],
  fillRule: FillRuleName,
): Ring[] {
  const engine = new Clipper64();
  engine.addSubject(toPaths(subject, UNITS_PER_MM));
  if (clip.length > 0) engine.addClip(toPaths(clip, UNITS_PER_MM));
  const solution: Paths64 = [];
  const rule = fillRule === 'nonzero' ? FillRule.NonZero : FillRule.EvenOdd;
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

/** Mitres longer than this many times the offset are cut square. */
const MITRE_LIMIT = 10;

function toPaths(rings: readonly Ring[], units: number): Paths64 {
  return rings.map((ring) => toPath(ring, units)).filter((path) => path.length > 2);
}

/** Points that are not finite, or fall on their forerunner, are left out. */
function toPath(ring: Ring, units: number): Path64 {
  const path: Path64 = [];
  let [lastX, lastY] = [Number.NaN, Number.NaN];
  for (let index = 0; index + 1 < ring.length; index += 2) {
    const x = toUnits(ring[index] ?? Number.NaN, units);
    const y = toUnits(ring[index + 1] ?? Number.NaN, units);
    if (Number.isNaN(x) || Number.isNaN(y) || (x === lastX && y === lastY)) continue;
    path.push({ x, y });
    lastX = x;
    lastY = y;
  }
  return path;
}

/** `+ 0` turns −0 into 0, which the library's comparisons by identity need. */
function toUnits(value: number, units: number): number {
  return Math.round(Math.max(-FARTHEST, Math.min(FARTHEST, value)) * units) + 0;
}

function toRings(paths: Paths64, units: number): Ring[] {
  return paths.map((path) => {
    const ring = new Float64Array(path.length * 2);
    path.forEach((point, index) => {
      ring[2 * index] = point.x / units;
      ring[2 * index + 1] = point.y / units;
    });
    return ring;
  });
}
