/** Which narrow places are told together, and in which order. */
import { defined } from '../../base/defined';
import type { Polygon, Ring } from '../../geometry/base/polygon-types';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { isMostlyThin } from '../../geometry/polygon/mostly-thin';
import { simplifyRing } from '../../geometry/polygon/simplify';
import type { Sheet } from '../../sheet/types';
import type { Stencil } from '../check';
import type { ShownPart } from '../later-paint';

/** The slots of one opening together, and with its tips where it is a line that is too fine; other tips one by one. */
export function byOpening(stencil: Stencil, sheet: Sheet, parts: readonly ShownPart[]): (readonly ShownPart[])[] {
  const openings = new Map<number, ShownPart[]>();
  for (const each of parts) {
    const { polygon } = each.part;
    openings.set(polygon, [...(openings.get(polygon) ?? []), each]);
  }
  return [...openings].flatMap(([polygon, own]) => {
    const isAsked = own.length > 1 && own.some(({ part }) => part.kind !== 'neck');
    if (isAsked && isFineLine(stencil, sheet, defined(sheet.openings[polygon]))) return [own];
    const [slots, tips] = [
      own.filter(({ part }) => part.kind === 'neck'),
      own.filter(({ part }) => part.kind !== 'neck'),
    ];
    return [...tips.map((tip) => [tip]), ...(slots.length > 0 ? [slots] : [])];
  });
}

/** Whether most of an opening is too narrow, as of a letter or a brush stroke that is drawn too small. */
function isFineLine({ limits }: Stencil, { kerf }: Sheet, opening: Polygon): boolean {
  const rough: Polygon = { outer: roughly(opening.outer), holes: opening.holes.map(roughly).filter(isThere) };
  return isMostlyThin(rough, limits.opening - kerf);
}

/** Moving an outline takes long, and here only areas count. */
const roughly = (ring: Ring): Ring => simplifyRing(ring, DRAWN_ALIKE);

const isThere = (ring: Ring): boolean => ring.length > 0;

/** Lengths in mm that are drawn alike are equal. */
export const stepsOf = (length: number): number => Math.round(length / DRAWN_ALIKE);

/** The least first; of equals the one on the left, then the upper one, in whatever order they were found. */
export function inOrder(parts: readonly ShownPart[], rank: (part: ShownPart) => number): ShownPart[] {
  return [...parts].sort((a, b) => {
    const [first, second] = [a.part.extent, b.part.extent];
    return rank(a) - rank(b) || first.minX - second.minX || first.minY - second.minY;
  });
}
