/**
 * How a drag knife begins and ends a cut. Its blade trails behind the tool's axis, so that it points nowhere until it has
 * been drawn along: it goes down beside the line, on the side that falls away, and is lifted a little beyond where it began.
 * That the blade swivels at corners is for the machine to allow for: done twice it is wrong.
 */
import type { Curve, Point } from '../geometry/base/curve-types';
import type { Region } from '../geometry/base/polygon-types';
import { regionContains } from '../geometry/boolean/index';
import { tangentAt } from '../geometry/curve/index';
import { type Chain, headOf } from './chains';

/** Radians from the line's own direction to the lead-in, where there is room for it: it comes in at 45° from behind. */
const SLANT = (3 * Math.PI) / 4;

/** Points of a lead-in that are looked at. */
const SAMPLES = 8;

/** A lead-in may be shortened to so much of its length. */
const SHORTEST = 0.25;

/**
 * @param chain closed, with the material on its right on the screen
 * @param material what must not be cut; the chain bounds it
 */
export function withKnifeEnds(
  chain: Chain,
  material: Region,
  { leadIn = 0, overcut = 0 }: { readonly leadIn?: number; readonly overcut?: number },
): Curve[] {
  const start = leadIn > 0 ? leadInFor(chain, material, leadIn) : undefined;
  const first = chain[0];
  if (!first) return [];
  const before: Curve[] = start ? [{ kind: 'line', start, end: first.start }] : [];
  return [...before, ...chain, ...headOf(chain, overcut)];
}

function leadInFor(chain: Chain, material: Region, length: number): Point | undefined {
  const [first, last] = [chain[0], chain.at(-1)];
  if (!first || !last) return undefined;
  const [out, into] = [tangentAt(first, 0), tangentAt(last, 1)];
  const outward = Math.atan2(out.y, out.x);
  // The waste lies between the line that goes out and the one that came in, on the left: angles fall to the left, y down.
  const back = Math.atan2(-into.y, -into.x);
  const turn = (((outward - back) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const angle = outward - (turn < Math.PI - 1e-6 && turn > 1e-6 ? turn / 2 : SLANT);
  const { start } = first;
  for (let reach = length; reach >= SHORTEST * length; reach /= 2) {
    const at = (share: number): Point => ({
      x: start.x + share * reach * Math.cos(angle),
      y: start.y + share * reach * Math.sin(angle),
    });
    const isClear = Array.from({ length: SAMPLES }, (_, i) => at((i + 1) / SAMPLES)).every(
      (point) => !regionContains(material, point),
    );
    if (isClear) return at(1);
  }
  return undefined;
}
