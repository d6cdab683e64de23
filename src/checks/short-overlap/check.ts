import { formatMillimetres } from '../../config/values';
import { MEANT_TO_MEET } from '../../geometry/base/tolerances';
import type { ShortOverlap } from '../../stack/index';
import { quoted } from '../../text/wording';
import type { StackCheck, StackStencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer } from '../places';
import { quotedName, relatedOnEdge, spanOnEdge } from '../stack-places';

/** mm: colours that run over each other by no more only touch. */
const TOUCHING = MEANT_TO_MEET;

/**
 * In slips: a part that runs out into an outline and is no longer comes of outlines that cross, at 14° or more. Common
 * practice, no source.
 */
const CROSSING = 2;

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
    for (const overlap of stack.seams(limits.slip).overlaps) {
      const least = overlap.runsOut ? CROSSING * limits.slip : limits.slip;
      if (overlap.length >= least && stack.layers[overlap.earlier]?.file === file) yield* describe(stencil, overlap);
    }
  },
};

function* describe(stencil: StackStencil, overlap: ShortOverlap): Iterable<FindingDraft> {
  const { earlier, later, slipping, width, at, facing, length } = overlap;
  const [first, second] = [stencil.stack.layers[earlier], stencil.stack.layers[later]];
  if (!first || !second) return;
  const [onFirst, onSecond] = slipping === earlier ? [facing, at] : [at, facing];
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
    related: [relatedOnEdge(stencil, second, onSecond, `The edge of ${other} here`, onFirst)],
    subject: { kind: 'overlap', earlier: first, later: second, overlap },
  };
}
