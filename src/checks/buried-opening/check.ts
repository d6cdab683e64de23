import type { Region } from '../../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { boxOfPolygon, intersection, union } from '../../geometry/boolean/index';
import type { Sheet } from '../../sheet/types';
import { registrationMarks } from '../../stack/registration-marks';
import type { StackCheck, Stencil } from '../check';
import { takenApart } from '../paint-conflicts';
import { contourSpan, inLayer } from '../places';
import { isSpeckOpening } from '../specks';
import { ownLayers } from '../stack-places';

/** mm: by how much an opening may reach beyond the mark that makes it, through rounding. */
const BESIDE = DRAWN_ALIKE;

/** Openings whose paint is nowhere seen, as later layers paint over all of it. */
export const hiddenOpening: StackCheck = {
  meta: {
    id: 'buried-opening',
    summary: 'An opening completely covered by later colours.',
    outcome: 'leave an opening that later colours cover',
    severity: 'hint',
    reads: 'stack',
    fixes: ['remove-opening'],
    acceptable: true,
    row: { wrong: 'cut and sprayed for nothing: later colours cover it', click: 'remove it' },
  },
  *run(stencil) {
    const { hiddenOpenings: buried } = stencil.stack.seams(stencil.limits.slip);
    for (const {
      number,
      layer: { sheet },
    } of ownLayers(stencil)) {
      const own = buried
        .filter(({ layer }) => layer === number)
        .flatMap(({ opening }) => sheet.openings[opening] ?? []);
      const marks = own.length > 0 ? registrationMarks(sheet.layer) : [];
      const meant = own.length > 0 ? meantToShow(stencil, sheet) : [];
      for (const polygon of own) {
        if (isSpeckOpening(stencil, sheet, polygon)) continue;
        // Marks are cut in every sheet, one over the other.
        if (marks.some(({ box }) => boxContainsBox(growBox(box, BESIDE), boxOfPolygon(polygon)))) continue;
        // The drawing shows it: mixed-colours tells what hides it.
        if (intersection([polygon], meant).length > 0) continue;
        yield {
          message: 'Opening completely covered by later colours. Remove it, unless it is an undercoat.',
          detail: 'Nothing that is sprayed through it is seen, and cutting it costs time and strength of the sheet.',
          span: contourSpan(stencil, sheet, polygon.outer),
          ...inLayer(sheet),
          at: { x: polygon.outer[0] ?? 0, y: polygon.outer[1] ?? 0 },
          related: [],
          subject: { kind: 'opening', sheet, opening: polygon },
        };
      }
    }
  },
};

/** What the drawing shows of a colour that was taken apart from it, though the order of spraying covers it. */
function meantToShow(stencil: Stencil, sheet: Sheet): Region {
  const part = takenApart(stencil).find(({ sheets }) => sheets.includes(sheet));
  const own = part?.order.conflicts.filter(({ covered }) => covered === sheet.layer.paint);
  return union((own ?? []).map(({ region }) => region));
}
