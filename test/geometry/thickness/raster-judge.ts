/** Thin parts compared with a distance transform: what pixels can tell for sure, and what they cannot. */
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Polygon } from '../../../src/geometry/base/polygon-types';
import type { ThinPart } from '../../../src/geometry/thickness/types';
import {
  distances,
  type Labels,
  labels,
  type Picture,
  pathLengths,
  pixelAt,
  pointAt,
  rasterise,
} from './distance-raster';

export interface RasterVerdict {
  readonly missed: string[];
  readonly invented: string[];
  /** Necks and tips looked at, and those of them that pixels of this size cannot judge. */
  readonly judged: number;
  readonly unclear: number;
}

/**
 * In pixels: how far round a neck's chord its polygon is cut. Where a neck ends in a sharp notch, pixels close the
 * notch for some way.
 */
const NOTCH = 6;

interface Field extends Picture {
  /** mm to the boundary, right to one pixel. */
  readonly depth: Float64Array;
  readonly radius: number;
  /** Pieces of the polygon once it is cut along the necks' chords. */
  readonly pieces: Labels;
  /** The same once it is cut so widely that sharp notches are open. */
  readonly parted: Labels;
}

export function judgeByPixels(
  polygon: Polygon,
  parts: readonly ThinPart[],
  width: number,
  pitch: number,
): RasterVerdict {
  const picture = rasterise(polygon, pitch);
  const { inside } = picture;
  const depth = distances(picture, (pixel) => inside[pixel] === 0).map((distance) => distance - pitch / 2);
  const cutBy = (reach: number): Labels => {
    const cut = chordPixels(picture, parts, reach);
    return labels(picture, (pixel) => inside[pixel] === 1 && !cut.has(pixel), false);
  };
  const field: Field = { ...picture, depth, radius: width / 2, pieces: cutBy(1), parted: cutBy(NOTCH) };
  const necks = judgeNecks(field, parts);
  const tips = judgeTips(field, parts, width);
  const spare = parts.reduce((sum, { kind, sides }) => sum + (kind === 'neck' ? sides - 2 : 0), 0);
  const missed = missedNecks(field);
  return {
    missed: [...(missed.length > spare ? missed : []), ...missedTips(field, parts, width)],
    invented: [...necks.invented, ...tips.invented],
    judged: parts.length,
    unclear: necks.unclear,
  };
}

/** Two places surely wide enough, in one piece, between which surely no disc of the width passes. */
function missedNecks({ depth, radius, pitch, parted: pieces, columns, rows, x, y }: Field): string[] {
  const raster = { columns, rows, pitch, x, y };
  const loose = labels(raster, (pixel) => depth[pixel]! >= radius - 1.5 * pitch, true);
  const cores = new Map<number, Set<number>>();
  const missed: string[] = [];
  for (let pixel = 0; pixel < depth.length; pixel += 1) {
    if (depth[pixel]! < radius + 1.5 * pitch || pieces.of[pixel] === 0) continue;
    const known = cores.get(pieces.of[pixel]!) ?? new Set();
    const isApart = known.size > 0 && !known.has(loose.of[pixel]!);
    if (isApart) missed.push(`neck missed towards ${show(pointAt(raster, pixel))}`);
    cores.set(pieces.of[pixel]!, known.add(loose.of[pixel]!));
  }
  return missed;
}

/** A neck is invented if what lies on one side of its chord surely has no place wide enough. */
function judgeNecks(field: Field, parts: readonly ThinPart[]): { invented: string[]; unclear: number } {
  const { depth, radius, pitch, pieces } = field;
  const wide = new Uint8Array(pieces.count + 1);
  depth.forEach((value, pixel) => {
    if (value >= radius - 1.5 * pitch) wide[pieces.of[pixel]!] = 1;
  });
  const invented: string[] = [];
  let unclear = 0;
  for (const part of parts) {
    if (part.kind !== 'neck') continue;
    const sides = [-1, 1].map((side) => piecesBeside(field, part, side));
    const isNarrow = sides.some((beside) => beside.every((piece) => wide[piece] === 0));
    if (sides.some((beside) => beside.length === 0)) unclear += 1;
    else if (isNarrow) invented.push(`neck at ${show(part.from)}`);
  }
  return { invented, unclear };
}

function piecesBeside(field: Field, { from, to }: ThinPart, side: number): number[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 4 * field.pitch) return [];
  const [nx, ny] = [(side * (from.y - to.y)) / length, (side * (to.x - from.x)) / length];
  const found = [0.35, 0.5, 0.65].map((share) => {
    const [x, y] = [from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)];
    return field.pieces.of[pixelAt(field, { x: x + 2.5 * field.pitch * nx, y: y + 2.5 * field.pitch * ny })]!;
  });
  return found.filter((piece) => piece > 0);
}

/**
 * A tip is invented if nothing near it reaches, by ways within the polygon, farther than the width beyond the discs.
 */
function judgeTips(field: Field, parts: readonly ThinPart[], width: number): { invented: string[] } {
  const { depth, radius, pitch, inside } = field;
  const tips = parts.filter(({ kind }) => kind === 'tip');
  if (tips.length === 0) return { invented: [] };
  const away = pathLengths(
    field,
    (pixel) => inside[pixel] === 1,
    (pixel) => depth[pixel]! >= radius + pitch,
  );
  const farthest = tips.map(() => 0);
  for (let pixel = 0; pixel < depth.length; pixel += 1) {
    if (inside[pixel] === 0 || away[pixel]! - radius < width - 3 * pitch) continue;
    const point = pointAt(field, pixel);
    tips.forEach((tip, at) => {
      if (isNear(point, tip, width)) farthest[at] = Math.max(farthest[at]!, away[pixel]! - radius);
    });
  }
  return { invented: tips.filter((_, at) => farthest[at] === 0).map(({ from }) => `tip at ${show(from)}`) };
}

/** Pixels that are surely farther than the width from what discs cover belong to some part. */
function missedTips(field: Field, parts: readonly ThinPart[], width: number): string[] {
  const { depth, radius, pitch, inside } = field;
  if (parts.some(({ kind }) => kind === 'whole')) return [];
  const away = distances(field, (pixel) => depth[pixel]! >= radius - pitch);
  for (let pixel = 0; pixel < depth.length; pixel += 1) {
    if (inside[pixel] === 0 || away[pixel]! - radius < width + 3 * pitch) continue;
    const point = pointAt(field, pixel);
    if (!parts.some((part) => isNear(point, part, width))) return [`tip missed at ${show(point)}`];
  }
  return [];
}

function isNear(point: Point, { from, to, reach, length }: ThinPart, width: number): boolean {
  const distance = Math.hypot(point.x - (from.x + to.x) / 2, point.y - (from.y + to.y) / 2);
  return distance <= Math.max(reach, length) + 2 * width;
}

/** Pixels whose middle is within `reach` pixels of a neck's chord. */
function chordPixels(picture: Picture, parts: readonly ThinPart[], reach: number): Set<number> {
  const pixels = new Set<number>();
  for (const { kind, from, to } of parts) {
    if (kind !== 'neck') continue;
    const steps = Math.ceil((2 * Math.hypot(to.x - from.x, to.y - from.y)) / picture.pitch) + 1;
    for (let step = 0; step <= steps; step += 1) {
      const share = step / steps;
      addDisc(pixels, picture, { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }, reach);
    }
  }
  return pixels;
}

function addDisc(pixels: Set<number>, picture: Picture, centre: Point, reach: number): void {
  const middle = pixelAt(picture, centre);
  for (let row = -reach; row <= reach; row += 1) {
    for (let column = -reach; column <= reach; column += 1) {
      if (row * row + column * column <= reach * reach) pixels.add(middle + row * picture.columns + column);
    }
  }
}

function show({ x, y }: Point): string {
  return `${x.toFixed(2)},${y.toFixed(2)}`;
}
