import { formatMillimetres } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import { MEANT_TO_MEET } from '../../geometry/base/tolerances';
import type { ShortOverlap } from '../../stack/index';
import { quoted } from '../../text/wording';
import type { StackCheck, StackStencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer } from '../places';
import { joined, overlapRuns, type Run } from '../seam-runs';
import { quotedName, relatedOnEdge, spanOnEdge } from '../stack-places';

/** mm: colours that run over each other by no more only touch. */
const TOUCHING = MEANT_TO_MEET;

/** Seams of neighbouring colours that open when a sheet lands off its place by less than the slip. */
export const shortOverlap: StackCheck = {
  meta: {
    id: 'short-overlap',
    summary: 'Neighbouring colours that overlap less than the layers may slip.',
    outcome: 'leave two colours with too little overlap',
    severity: 'warning',
    reads: 'stack',
    fixes: ['spread-colour'],
    cure: ({ subject }) =>
      subject?.kind === 'overlap'
        ? `Extend ${quotedName(subject.earlier)} under ${quotedName(subject.later)}`
        : undefined,
    acceptable: true,
    afterFix: {
      refuses: true,
      family: 'seam',
    },
    row: { wrong: 'bare ground shows as soon as a sheet slips', click: 'extend the earlier colour' },
  },
  *run(stencil) {
    const { stack, limits, file } = stencil;
    for (const run of overlapRuns(stack.seams(limits.slip).overlaps, limits.slip)) {
      if (stack.layers[run[0].earlier]?.file === file) yield* describe(stencil, run);
    }
  },
};

function* describe(stencil: StackStencil, run: Run<ShortOverlap>): Iterable<FindingDraft> {
  const overlap = joined(run);
  const { earlier, later, width, at, length } = overlap;
  const [first, second] = [stencil.stack.layers[earlier], stencil.stack.layers[later]];
  if (!first || !second) return;
  const [onFirst, onSecond] = sidesOf(overlap);
  const { slip } = stencil.limits;
  const [by, allowed] = [width, slip].map(formatMillimetres);
  const [one, other] = quoted([first.sheet.layer.name, second.sheet.layer.name]);
  const isTouching = width <= TOUCHING;
  yield {
    message:
      `${one} and ${other} ${isTouching ? 'meet without overlapping' : `overlap by only ${by}`} (allow ${allowed} for ` +
      `slip) along ${length.toFixed(1)} mm: bare ground will show.`,
    detail:
      `Bare ground shows there as soon as a sheet slips${isTouching ? '' : ` by more than ${by}`}; ${allowed} must be ` +
      `allowed for. Extend ${quotedName(first)} under ${quotedName(second)}, or lower limits.slip in tombolo.json if ` +
      'you register more exactly.',
    span: spanOnEdge(stencil, first, onFirst, onSecond),
    ...inLayer(first.sheet),
    at,
    measure: { value: width, limit: slip, unit: 'mm' },
    related: [
      relatedOnEdge(stencil, second, onSecond, `The edge of ${other} here`, onFirst),
      ...run.slice(1).map((part) => {
        const [onThis, facing] = sidesOf(part);
        const message = `Overlap of ${formatMillimetres(part.width)} here, along ${part.length.toFixed(1)} mm`;
        return relatedOnEdge(stencil, first, onThis, message, facing);
      }),
    ],
    subject: { kind: 'overlap', earlier: first, later: second, overlap },
  };
}

/** Where it shows first, on the edge of the earlier colour and on that of the later one. */
function sidesOf({ earlier, slipping, at, facing }: ShortOverlap): readonly [Point, Point] {
  return slipping === earlier ? [facing, at] : [at, facing];
}
