import { count, formatMillimetres } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxesTouch } from '../../geometry/base/ring';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { add, perpendicular, scale } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import { boundsOf, pointAt, tangentAt } from '../../geometry/curve/index';
import type { SharedPiece } from '../../geometry/curve/shared-pieces';
import { type CutLine, type DoubledLine, doubledLinesOf } from '../../sheet/cut-lines/index';
import type { Sheet } from '../../sheet/types';
import type { Span } from '../../text/text';
import type { Wording } from '../../text/wording';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer, layerSpan } from '../places';

/** How far beside a line, in mm, it is looked what it separates. */
const BESIDE = PLAINLY_BESIDE;

/**
 * mm: the tool is over a shorter stretch again before it can char or tear more than its start does (common practice, no
 * source).
 */
const SHORT = 2;

/** As many places as lists have room for. */
const SHOWN = 50;

const CUT_TWICE = 'The tool follows such a line twice: a laser burns it wider, a blade tears it.';

/** Lines that a cutter would follow twice. */
export const doubledCut: Check = {
  meta: {
    id: 'doubled-cut',
    summary: 'Lines that would be cut twice.',
    outcome: 'leave a line that is cut twice',
    severity: 'warning',
    reads: 'file',
    fixes: ['unite-outlines', 'remove-doubled-line', 'remove-both-lines'],
    cure: ({ layer }) => `Remove the doubled line in "${layer}"`,
    acceptable: true,
    afterFix: { refuses: true },
    row: { wrong: 'a line is cut twice: it chars, or the knife tears', click: 'remove one' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      const all = doubledLinesOf(sheet.layer).filter((doubled) => isOnSheet(doubled, sheet.frame));
      const short = all.filter(({ stretch }) => stretch.length < SHORT);
      for (const doubled of all) if (!short.includes(doubled)) yield describe(sheet, doubled);
      const [only, ...more] = short;
      if (only) yield more.length > 0 ? describeShort(stencil, sheet, short) : { ...describe(sheet, only), ...HINT };
    }
  },
};

const HINT = { severity: 'hint' } as const;

/** What lies outside the frame is not cut. */
function isOnSheet({ first, stretch }: DoubledLine, frame: Box): boolean {
  return stretch.pieces.some(({ curve }) => {
    const own = first.curves[curve];
    return own !== undefined && boxesTouch(boundsOf(own), frame);
  });
}

/** Short stretches come by the dozen, of one cause: one hint for all of a layer. */
function describeShort(stencil: Stencil, sheet: Sheet, short: readonly DoubledLine[]): FindingDraft {
  const lengths = short.map(({ stretch }) => stretch.length);
  const length = lengths.reduce((sum, each) => sum + each, 0);
  const [longest, all] = [Math.max(...lengths), length].map(formatMillimetres);
  const places = short.map(({ second, first, stretch: { pieces } }) => ({
    message: 'A line that is cut twice',
    span: spanOf(
      second,
      pieces.map(({ otherCurve }) => otherCurve),
    ),
    at: middleOf(sheet, first, pieces)[0],
  }));
  return {
    severity: 'hint',
    message: `${count(short.length, 'short line')} of up to ${longest} cut twice, ${all} in all: too short to char or tear.`,
    detail:
      `${CUT_TWICE} Where it is shorter than ${formatMillimetres(SHORT)}, little comes of that but the time that it takes. ` +
      'Unite the outlines, or leave them.',
    span: layerSpan(stencil, sheet),
    ...inLayer(sheet),
    ...(places[0] && { at: places[0].at }),
    measure: { value: length, limit: 0, unit: 'mm' },
    related: places.slice(0, SHOWN),
  };
}

function describe(sheet: Sheet, doubled: DoubledLine): FindingDraft {
  const {
    first,
    second,
    stretch: { pieces, length },
  } = doubled;
  const [at, sides] = middleOf(sheet, first, pieces);
  return {
    ...wordingOf(sheet, doubled, sides),
    span: spanOf(
      second,
      pieces.map(({ otherCurve }) => otherCurve),
    ),
    ...inLayer(sheet),
    at,
    measure: { value: length, limit: 0, unit: 'mm' },
    related: [
      {
        message: first === second ? 'The same line, going back' : 'The other line',
        span: spanOf(
          first,
          pieces.map(({ curve }) => curve),
        ),
        at,
      },
    ],
    subject: { kind: 'doubled', sheet, doubled },
  };
}

/** How many sides of the line are open: both within an opening, one at its edge, none within the material. */
type OpenSides = 0 | 1 | 2;

function wordingOf({ layer }: Sheet, { first, second, whole, stretch }: DoubledLine, sides: OpenSides): Wording {
  const length = formatMillimetres(stretch.length);
  if (first === second) {
    return {
      message: `Outline runs back along itself for ${length}: it will be cut twice there.`,
      detail: `${CUT_TWICE} Divide the outline into two there.`,
    };
  }
  if (whole && sides === 1) {
    return {
      message: `Line on top of another for ${length}: it will be cut twice. Remove one of the two.`,
      detail: CUT_TWICE,
    };
  }
  if (sides === 1) {
    return {
      message: `Two lines on top of each other for ${length}: they will be cut twice. Unite the two outlines.`,
      detail: CUT_TWICE,
    };
  }
  if (sides === 2) {
    return {
      message: `Two openings share a border of ${length}: cut twice, with no material between. Unite them.`,
      detail:
        `${CUT_TWICE} As no material stands between them, they are one opening. Unite the two outlines, or move them ` +
        'apart by the width of a bridge.',
    };
  }
  return {
    message:
      layer.reading === 'sheet'
        ? `Two pieces of material share a border of ${length}: a cut where none should be. Unite them.`
        : `Two lines cancel each other out for ${length}: a cut where none should be.`,
    detail: `${CUT_TWICE} There it would cut where nothing is to be cut at all. Unite the two outlines, or remove both.`,
  };
}

function middleOf(sheet: Sheet, line: CutLine, pieces: readonly SharedPiece[]): [Point, OpenSides] {
  const { curve, from, to } = pieces[Math.floor(pieces.length / 2)] as SharedPiece;
  const own = line.curves[curve];
  if (!own) return [{ x: 0, y: 0 }, 1];
  const t = (from + to) / 2;
  const at = pointAt(own, t);
  const aside = scale(perpendicular(tangentAt(own, t)), BESIDE);
  const open = [aside, scale(aside, -1)].filter((step) => regionContains(sheet.openings, add(at, step)));
  return [at, open.length as OpenSides];
}

/** From the first to the last of the commands that drew some curves of a line. */
function spanOf({ shape, spans }: CutLine, curves: readonly number[]): Span {
  const own = curves.map((curve) => spans[curve] ?? shape.element.startTag);
  return own.reduce((all, each) => ({ from: Math.min(all.from, each.from), to: Math.max(all.to, each.to) }));
}
