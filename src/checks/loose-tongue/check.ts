import { DEFAULT_DISTANCE, sprayPressure } from '../../config/bending';
import { materialOf } from '../../config/limits';
import { formatMillimetres, shortNumber } from '../../config/values';
import { LEAST_SHEET } from '../../geometry/base/tolerances';
import { bendingOf, DEFLECTION_LIMIT, stripReach } from '../../sheet/deflection';
import type { ThinPlace } from '../../sheet/thin-places';
import { findWhiskers, type Tongue } from '../../sheet/tongues';
import type { Sheet } from '../../sheet/types';
import { isTongueAtEdge } from '../at-edge';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer, spanAt } from '../places';
import { describeThinPart } from '../thin-part';

/** Material that is held at one end only, and lifts under the spray or bends and tears by itself. */
export const looseTongue: Check = {
  meta: {
    id: 'loose-tongue',
    summary: 'Material held at one end only, which lifts under the spray.',
    outcome: 'leave a loose tongue',
    severity: 'warning',
    reads: 'file',
    fixes: ['tie-tongue', 'widen-bridge'],
    cure: ({ layer, subject }) => (subject?.kind === 'tongue' ? `Bridge the loose tongue in "${layer}"` : undefined),
    acceptable: true,
    afterFix: {
      refuses: true,
      unless: ['adds-opening', 'removes-bridge', 'holds-island'],
    },
    row: { wrong: 'a strip, or a shape on a narrow stalk, lifts under the spray', click: 'bridge its end' },
  },
  *run(stencil) {
    const bending = bendingOf(stencil.config);
    for (const sheet of stencil.sheets) {
      for (const tongue of sheet.tongues) {
        const { from, to, tip, root } = tongue;
        // What so little holds is told as an island.
        if (root - sheet.kerf < LEAST_SHEET) continue;
        if (!isTongueAtEdge(stencil, sheet, [from, to, tip])) yield describe(stencil, sheet, tongue);
      }
      for (const whisker of findWhiskers(sheet, bending)) {
        const { from, to } = whisker;
        if (!isTongueAtEdge(stencil, sheet, [from, to])) yield describeWhisker(stencil, sheet, whisker);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, tongue: Tongue): FindingDraft {
  const { from, to, root, reach, end, lift } = tongue;
  const { config } = stencil;
  const [most, width, length] = [DEFLECTION_LIMIT, root, reach].map(formatMillimetres);
  const longest = formatMillimetres(stripReach(DEFLECTION_LIMIT, bendingOf(config)));
  const off = shortNumber((config.spray.distance ?? DEFAULT_DISTANCE) / 10);
  return {
    message: `Loose tongue lifts ${howFar(tongue)} under spray from ${off} cm (maximum ${most}). Bridge its end.`,
    detail:
      `It reaches ${length} and is held only at its root, ${width} wide. Its own weight and an assumed spray of ` +
      `${shortNumber(sprayPressure(config))} Pa bend it; paint creeps under what lifts by more than ${most}. A plain ` +
      `strip of ${materialOf(config).short} may reach ${longest}. Bridge its end to the sheet, make it shorter or its ` +
      'root wider, or choose a stiffer material.',
    span: spanAt(stencil, sheet, end),
    ...inLayer(sheet),
    at: end,
    measure: { value: lift, limit: DEFLECTION_LIMIT, unit: 'mm' },
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

/** The model holds up to about a tenth of the length. */
function howFar({ lift, reach }: Tongue): string {
  return lift > reach / 10 ? `over ${formatMillimetres(reach / 10)}` : formatMillimetres(lift);
}

function describeWhisker(stencil: Stencil, sheet: Sheet, part: ThinPlace): FindingDraft {
  const { bridge: limit, material } = stencil.limits;
  const [length, width, least] = [part.reach, part.cutWidth, limit].map(formatMillimetres);
  return describeThinPart(stencil, sheet, part, {
    limit,
    message: `Loose tongue ${length} long, only ${width} wide (minimum ${least}): it will bend or tear. Widen it.`,
    detail:
      `What is held at one end and narrower than a bridge of ${material} may be curls with damp, and catches and tears ` +
      `when the sheet is lifted. Widen it to ${least}, make it shorter, or let it taper from a wider root.`,
  });
}
