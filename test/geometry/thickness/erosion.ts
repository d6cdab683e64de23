/**
 * A second way to thin parts, by polygon offset: where discs of the width fit is the polygon shrunk by half of it (its
 * *core*). Once a polygon is cut along the chords of all its necks, each piece must hold exactly one core with as many
 * holes as the piece: fewer mean a neck that is none, more, or fewer holes, a neck that was missed.
 */
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Polygon, Region, Ring } from '../../../src/geometry/base/polygon-types';
import { areaOf, difference, offset, regionContains, regionFromRings } from '../../../src/geometry/boolean/index';
import type { ThinPart } from '../../../src/geometry/thickness/types';

export interface Verdict {
  /** Undefined when the core changes its make-up with a few micrometres of the width: nothing can be told then. */
  readonly wrong: string[] | undefined;
}

/** @param tolerance mm, the one that the parts were sought with */
export function judgeByErosion(
  polygon: Polygon,
  parts: readonly ThinPart[],
  width: number,
  tolerance: number,
): Verdict {
  const radii = [width / 2 - tolerance - 0.002, width / 2 - tolerance / 2, width / 2 + 0.002];
  const cores = radii.map((radius) => offset([polygon], -radius, 'round', 0.0005));
  const makeUp = cores.map(
    (core) =>
      `${core.length} with ${core
        .map(({ holes }) => holes.length)
        .sort()
        .join()}`,
  );
  if (new Set(makeUp).size > 1) return { wrong: undefined };
  const core = cores[1]!;
  const whole = parts.some(({ kind }) => kind === 'whole');
  const isEmpty = core.length === 0;
  if (whole || isEmpty) return { wrong: whole && isEmpty ? [] : [`whole: ${whole}, but core ${makeUp[1]}`] };
  return { wrong: compare(cutAlongNecks(polygon, parts), core, spareOf(parts)) };
}

/** A neck of n sides is reported once, yet n − 1 cuts part its polygon. */
function spareOf(parts: readonly ThinPart[]): number {
  return parts.reduce((sum, { kind, sides }) => sum + (kind === 'neck' ? sides - 2 : 0), 0);
}

function compare(pieces: Region, cores: Region, spare: number): string[] {
  const missed: string[] = [];
  const count = pieces.map(() => 0);
  for (const core of cores) {
    const place = { x: core.outer[0]!, y: core.outer[1]! };
    const home = pieces.findIndex((piece) => regionContains([piece], place));
    if (home < 0) return [`core at ${show(place)} lies in no piece`];
    count[home]! += 1;
    const [own, expected] = [core.holes.length, pieces[home]!.holes.length];
    if (count[home]! > 1) missed.push(`another core at ${show(place)}`);
    else if (own !== expected) missed.push(`core at ${show(place)} has ${own} holes in a piece with ${expected}`);
  }
  const bare = pieces.filter((_, at) => count[at] === 0);
  const invented = bare.map(({ outer }) => `no core at ${show({ x: outer[0]!, y: outer[1]! })}`);
  return missed.length > spare ? [...missed, ...invented] : invented;
}

function show({ x, y }: Point): string {
  return `${x.toFixed(3)},${y.toFixed(3)}`;
}

export function cutAlongNecks(polygon: Polygon, parts: readonly ThinPart[]): Region {
  const cuts = parts.filter(({ kind }) => kind === 'neck').map(({ from, to }) => slit(from, to));
  if (cuts.length === 0) return [polygon];
  return difference([polygon], regionFromRings(cuts, 'nonzero')).filter((piece) => areaOf([piece]) > 1e-4);
}

/** 1 µm wide, and 2 µm longer at both ends. */
function slit(from: Point, to: Point): Ring {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = length > 1e-9 ? [(to.x - from.x) / length, (to.y - from.y) / length] : [1, 0];
  const [x0, y0, x1, y1] = [from.x - 0.002 * ux, from.y - 0.002 * uy, to.x + 0.002 * ux, to.y + 0.002 * uy];
  const [hx, hy] = [-0.0005 * uy, 0.0005 * ux];
  return Float64Array.of(x0 - hx, y0 - hy, x1 - hx, y1 - hy, x1 + hx, y1 + hy, x0 + hx, y0 + hy);
}
