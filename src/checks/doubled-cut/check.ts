import { formatMillimetres } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { add, perpendicular, scale } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import type { SharedPiece } from '../../geometry/curve/coincident';
import { pointAt, tangentAt } from '../../geometry/curve/index';
import { type CutLine, type DoubledLine, doubledLinesOf } from '../../sheet/cut-lines/index';
import type { Sheet } from '../../sheet/types';
import type { Span } from '../../text/text';
import type { Check } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer } from '../places';

/** How far beside a line, in mm, it is looked what it separates. */
const BESIDE = PLAINLY_BESIDE;

/** Lines that a cutter would follow twice. */
export const doubledCut: Check = {
  meta: {
    id: 'doubled-cut',
    summary: 'Lines that would be cut twice.',
    outcome: 'leave a line that is cut twice',
    severity: 'warning',
    reads: 'file',
    fixes: ['unite-outlines', 'remove-doubled-line', 'remove-both-lines'],
    acceptable: true,
    afterFix: { refuses: true },
    row: { wrong: 'a line is cut twice: it chars, or the knife tears', click: 'remove one' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const doubled of doubledLinesOf(sheet.layer)) yield describe(sheet, doubled);
    }
  },
};

function describe(sheet: Sheet, doubled: DoubledLine): FindingDraft {
  const {
    first,
    second,
    stretch: { pieces, length },
  } = doubled;
  const [at, sides] = middleOf(sheet, first, pieces);
  return {
    message: message(sheet, doubled, sides),
    span: spanOf(
      second,
      pieces.map(({ otherCurve }) => otherCurve),
    ),
    ...inLayer(sheet),
    at,
    measure: { value: length, limit: 0, unit: 'mm' },
    related: [
      {
        message: first === second ? 'The same line, on its other way' : 'The line that it lies on',
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

function message({ layer }: Sheet, { first, second, whole, stretch }: DoubledLine, sides: OpenSides): string {
  const length = formatMillimetres(stretch.length);
  const burnt = 'a laser burns it wider, a blade tears it';
  if (first === second) {
    return (
      `This outline runs back along itself for ${length}, and would be cut twice there: ${burnt}. ` +
      'Part it in two there.'
    );
  }
  if (whole && sides === 1) {
    return `This line of ${length} lies on another one, and would be cut twice: ${burnt}. Remove one of the two.`;
  }
  if (sides === 1) {
    return `Two lines lie on each other for ${length}, which would be cut twice: ${burnt}. Unite the two outlines.`;
  }
  if (sides === 2) {
    return (
      `Two openings share this border of ${length}: it would be cut twice, and no material stands between them, ` +
      'so that they are one opening. Unite the two outlines, or move them apart by the width of a bridge.'
    );
  }
  const why =
    layer.reading === 'sheet'
      ? 'Two pieces of material share this border'
      : 'Two lines lie on each other, and cancel each other out,';
  return (
    `${why} for ${length}: it would be cut twice, where nothing is to be cut at all. Unite the two outlines, ` +
    'or remove both.'
  );
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
