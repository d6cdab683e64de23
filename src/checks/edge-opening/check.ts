import { defined } from '../../base/defined';
import { formatMillimetres } from '../../config/values';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { type EdgeOpening, lacksMargin, marginNeeded, openingsAtEdge } from '../../sheet/sheet-edge';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer, rootSpan, spanAt } from '../places';

/** Openings that leave no rim, or too thin a one, at the sheet's edge. */
export const edgeOpening: Check = {
  meta: {
    id: 'edge-opening',
    summary: 'An opening across the edge of the sheet, or too near it.',
    outcome: "bring an opening too near the sheet's edge",
    severity: 'error',
    reads: 'file',
    fixes: ['add-margin', 'add-margin-stack'],
    cure: () => 'Add a margin',
    acceptable: true,
    afterFix: {
      refuses: true,
      unless: ['adds-opening'],
      ofFile: true,
    },
    row: { wrong: 'the rim tears, the sheet comes apart', click: 'add a margin' },
  },
  *run(stencil) {
    const found = stencil.sheets.flatMap((sheet) => openingsAtEdge(sheet, stencil.limits.bridge));
    if (lacksMargin(found)) yield describeMargin(stencil, found);
    else for (const each of found) yield describe(stencil, each);
  },
};

function describe(stencil: Stencil, { sheet, opening, at, rim }: EdgeOpening): FindingDraft {
  const { bridge: limit, material } = stencil.limits;
  const [wide, least] = [rim, limit].map(formatMillimetres);
  return {
    message:
      rim === 0
        ? `Opening crosses the sheet's edge (minimum rim ${least}): the sheet will come apart there.`
        : `Rim only ${wide} wide at the sheet's edge (minimum ${least} for ${material}): it will tear.`,
    detail: `${whatIsLeft(rim)} Move the opening inwards, or add a margin round the artwork, here or with "margin" in tombolo.json.`,
    span: spanAt(stencil, sheet, at),
    ...inLayer(sheet),
    at,
    measure: { value: rim, limit, unit: 'mm' },
    related: [],
    subject: { kind: 'opening', sheet, opening },
  };
}

/** All of them have one cause, and one fix. */
function describeMargin(stencil: Stencil, found: readonly EdgeOpening[]): FindingDraft {
  const { bridge: limit } = stencil.limits;
  const worst = defined([...found].sort(byRim)[0]);
  const [wide, least] = [worst.rim, limit].map(formatMillimetres);
  const across = found.filter(({ rim }) => rim === 0).length;
  const needed = marginNeeded(stencil.sheets, limit);
  return {
    message:
      across > 0
        ? `Margin missing: ${openingsRun(across)} off the sheet (minimum rim ${least}).${helpOf(needed)}`
        : `Margin too small: rim only ${wide} (minimum ${least}) at ${openings(found.length)}.${helpOf(needed)}`,
    detail:
      `${whatIsLeft(worst.rim)} Pieces that only come loose at the edge are part of this, and are not told apart. ` +
      'Add a margin round the artwork, here or with "margin" in tombolo.json, or move the artwork inwards.',
    span: rootSpan(stencil),
    at: worst.at,
    measure: { value: worst.rim, limit, unit: 'mm' },
    related: found.map(({ sheet, at, rim }) => ({
      message: rim === 0 ? 'An opening crosses the edge here' : `Rim only ${formatMillimetres(rim)} here`,
      span: spanAt(stencil, sheet, at),
      at,
    })),
    subject: { kind: 'edge', openings: found },
  };
}

function helpOf(margin: number | undefined): string {
  return margin === undefined ? '' : ` It needs ${margin} mm more on each side.`;
}

/** The thinnest first; of equals the one on the left, then the upper one, in whatever order they were found. */
function byRim(one: EdgeOpening, other: EdgeOpening): number {
  const [a, b] = [one, other].map(({ rim }) => Math.round(rim / DRAWN_ALIKE));
  return defined(a) - defined(b) || one.at.x - other.at.x || one.at.y - other.at.y;
}

function openings(many: number): string {
  return many === 1 ? 'an opening' : `${many} openings`;
}

function openingsRun(many: number): string {
  return many === 1 ? 'an opening runs' : `${many} openings run`;
}

function whatIsLeft(rim: number): string {
  return rim === 0
    ? 'Nothing is left of the sheet there, and paint runs over its edge.'
    : 'Only a thin strip is left of the sheet there.';
}
