import { materialOf } from '../../config/limits';
import { formatMillimetres } from '../../config/values';
import type { Protrusion } from '../../geometry/protrusion/find';
import { DEFLECTION_LIMIT, deflectionOf, maxOverhang, SPRAY_PRESSURE } from '../../sheet/deflection';
import type { Sheet } from '../../sheet/types';
import { isTongueAtEdge } from '../at-edge';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer, spanAt } from '../places';

/** Material that is held at one end only, and long enough to lift under the spray. */
export const looseTongue: Check = {
  meta: {
    id: 'loose-tongue',
    summary: 'Material held at one end only, which lifts under the spray.',
    outcome: 'leave a loose tongue',
    severity: 'warning',
    reads: 'file',
    fixes: [],
    acceptable: true,
    afterFix: {
      refuses: true,
      unless: ['adds-opening', 'removes-bridge', 'holds-island'],
    },
    row: { wrong: 'a long strip, held at one end, lifts under the spray', click: '' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const tongue of sheet.tongues) {
        const { from, to, tip } = tongue;
        if (!isTongueAtEdge(stencil, sheet, [from, to, tip])) yield describe(stencil, sheet, tongue);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, tongue: Protrusion): FindingDraft {
  const { from, to, root, reach, tip } = tongue;
  const material = materialOf(stencil.config);
  const [length, most, width] = [reach, maxOverhang(material), root].map(formatMillimetres);
  return {
    message: `Loose tongue ${length} long (maximum ${most} for ${material.short}): it will lift under the spray.`,
    detail:
      `It is held only at its root, ${width} wide. ${howFar(reach, deflectionOf(reach, material))} Paint creeps ` +
      'under what lifts. Bridge its end to the sheet, make it shorter, or choose a stiffer material.',
    span: spanAt(stencil, sheet, tip),
    ...inLayer(sheet),
    at: tip,
    measure: { value: reach, limit: maxOverhang(material), unit: 'mm' },
    related: [
      { at: from, facing: to },
      { at: to, facing: from },
    ].map(({ at, facing }, i) => ({
      message: i === 0 ? 'One side of its root' : 'Other side of its root',
      at,
      span: spanAt(stencil, sheet, at, facing),
    })),
    subject: { kind: 'tongue', sheet, tongue },
  };
}

/** The formula for the lift holds up to about a tenth of the length. */
function howFar(reach: number, lift: number): string {
  const most = reach / 10;
  const figure = lift > most ? `more than ${formatMillimetres(most)}` : `about ${formatMillimetres(lift)}`;
  return (
    `Its own weight and an assumed spray of ${SPRAY_PRESSURE} Pa lift its end by ${figure}; ` +
    `${formatMillimetres(DEFLECTION_LIMIT)} is the most that paint does not creep under.`
  );
}
