/** What all findings about thin places have in common. */

import type { Severity } from '../config/check-id';
import type { ThinPlace } from '../sheet/thin-places';
import type { Sheet } from '../sheet/types';
import type { Wording } from '../text/wording';
import type { Stencil } from './check';
import type { FindingDraft } from './finding';
import { inLayer, spanAt } from './places';

interface ThinPartWords extends Wording {
  /** Where it differs from what is usual for the check. */
  readonly severity?: Severity;
  /** mm */
  readonly limit: number;
  /** The part as it is measured, where that is not at its narrowest place: what later layers cover does not count. */
  readonly shown?: ThinPlace;
}

/** A finding at the narrowest place of a thin part, its two sides as related places. */
export function describeThinPart(
  stencil: Stencil,
  sheet: Sheet,
  part: ThinPlace,
  { limit, shown = part, ...words }: ThinPartWords,
): FindingDraft {
  const { from, to, cutWidth } = shown;
  const span = spanAt(stencil, sheet, from, to);
  const sides = [
    { at: from, span },
    { at: to, span: spanAt(stencil, sheet, to, from) },
  ];
  return {
    ...words,
    span,
    ...inLayer(sheet),
    at: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
    measure: { value: cutWidth, limit, unit: 'mm' },
    related: sides.map((side, i) => ({ message: i === 0 ? 'This side' : 'Opposite side', ...side })),
    subject: { kind: 'thin', sheet, part },
  };
}
