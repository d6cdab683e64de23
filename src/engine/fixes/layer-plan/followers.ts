/** Which bridges of a plan follow one that is moved: its mirror twin, and those of equal islands. Sheet mm. */
import { defined } from '../../../base/defined';
import { mirrorAbout } from '../../../edits/plan/design/axis';
import { type Design, designOf } from '../../../edits/plan/design/index';
import type { Bridge } from '../../../edits/plan/types';
import type { Point } from '../../../geometry/base/curve-types';
import { apply, invert } from '../../../geometry/base/matrix';
import { distance } from '../../../geometry/base/vector';
import type { Sheet } from '../../../sheet/types';

/** From where the one is moved to, to where the other goes. */
type Motion = (place: Point) => Point;

export interface Follower {
  /** Number in the plan. */
  readonly bridge: number;
  readonly motion: Motion;
}

/** mm: a bridge this near to another's image is its image. */
const SAME = 0.6;

/**
 * All that is alike by one motion or by several after each other, each once; the one that is moved is none of them.
 * @param bridges of the plan as it stands now, between the pieces of the sheet
 */
export function followersOf(sheet: Sheet, bridges: readonly Bridge[], moved: number): Follower[] {
  const design = designOf(sheet);
  const numbers = new Map(sheet.pieces.map((piece, number) => [piece, number]));
  const found: Follower[] = [{ bridge: moved, motion: (place) => place }];
  const taken = new Set([moved]);
  // What is found is gone on from, until nothing more comes.
  for (const { bridge, motion } of found) {
    const { island, target } = defined(bridges[bridge]);
    const ends = [island, target].flatMap((piece) => (piece.island ? (numbers.get(piece) ?? []) : []));
    for (const next of ends.flatMap((piece) => motionsFrom(design, piece))) {
      const image = imageOf(bridges, defined(bridges[bridge]), next);
      if (image === undefined || taken.has(image)) continue;
      taken.add(image);
      found.push({ bridge: image, motion: (place) => next(motion(place)) });
    }
  }
  return found.slice(1);
}

/** What takes an island to another that is its like, or to itself. */
function motionsFrom({ mirrors, alike }: Design, piece: number): Motion[] {
  const mirrored = mirrors
    .filter(({ images }) => images.has(piece))
    .map(
      (mirror): Motion =>
        (place) =>
          mirrorAbout(mirror, place),
    );
  const shifted = alike.flatMap(({ members }) => {
    const back = members.find((member) => member.piece === piece);
    const inverse = back && invert(back.motion);
    if (!inverse) return [];
    return members
      .filter((member) => member.piece !== piece)
      .map(
        ({ motion }): Motion =>
          (place) =>
            apply(motion, apply(inverse, place)),
      );
  });
  return [...mirrored, ...shifted];
}

/** Either way about: one between two islands may leave either. */
function imageOf(bridges: readonly Bridge[], { from, to }: Bridge, motion: Motion): number | undefined {
  const [a, b] = [motion(from), motion(to)];
  const isThere = (bridge: Bridge): boolean =>
    (distance(bridge.from, a) < SAME && distance(bridge.to, b) < SAME) ||
    (distance(bridge.from, b) < SAME && distance(bridge.to, a) < SAME);
  const number = bridges.findIndex(isThere);
  return number < 0 ? undefined : number;
}
