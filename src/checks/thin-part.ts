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
}

/** A finding at the narrowest place of a thin part, its two sides as related places. */
export function describeThinPart(
  stencil: Stencil,
  sheet: Sheet,
  part: ThinPlace,
  { limit, ...words }: ThinPartWords,
): FindingDraft {
  const span = spanAt(stencil, sheet, part.from, part.to);
  const sides = [
    { at: part.from, span },
    { at: part.to, span: spanAt(stencil, sheet, part.to, part.from) },
  ];
  return {
    ...words,
    span,
    ...inLayer(sheet),
    at: { x: (part.from.x + part.to.x) / 2, y: (part.from.y + part.to.y) / 2 },
    measure: { value: part.cutWidth, limit, unit: 'mm' },
    related: sides.map((side, i) => ({ message: i === 0 ? 'This side' : 'Opposite side', ...side })),
    subject: { kind: 'thin', sheet, part },
  };
}
