import { formatMillimetres } from '../../config/values';
import { interpolate } from '../../geometry/base/vector';
import type { BareGap } from '../../stack/index';
import { quoted } from '../../text/wording';
import type { StackCheck, StackStencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer } from '../places';
import { gapRuns, type Run } from '../seam-runs';
import { quotedName, relatedOnEdge, spanOnEdge } from '../stack-places';

/** Bare ground between two colours that is narrower than the slip. */
export const bareGap: StackCheck = {
  meta: {
    id: 'bare-gap',
    summary: 'Bare ground between neighbouring colours.',
    outcome: 'leave bare ground between two colours',
    severity: 'warning',
    reads: 'stack',
    fixes: ['spread-colour'],
    cure: ({ subject }) =>
      subject?.kind === 'gap' ? `Extend ${quotedName(subject.earlier)} under ${quotedName(subject.later)}` : undefined,
    acceptable: true,
    afterFix: { refuses: true, family: 'seam' },
    row: { wrong: 'bare ground shows between two colours that belong together', click: 'extend the earlier colour' },
  },
  *run(stencil) {
    const { stack, limits, file } = stencil;
    for (const run of gapRuns(stack.seams(limits.slip).gaps, limits.slip)) {
      if (stack.layers[run[0].earlier]?.file === file) yield* describeRun(stencil, run);
    }
  },
};

/** Told at the narrowest of them, which is filled first. */
function* describeRun(stencil: StackStencil, run: Run<BareGap>): Iterable<FindingDraft> {
  const apart = run.flatMap((gap) => [...describe(stencil, gap)]);
  const [worst, ...others] = apart;
  if (!worst) return;
  if (others.length === 0 || worst.subject?.kind !== 'gap') return yield worst;
  const related = others.map(({ span, at, measure }) => ({
    message: `Gap of ${formatMillimetres(measure?.value ?? 0)} here`,
    span,
    ...(at && { at }),
  }));
  yield { ...worst, related: [...worst.related, ...related], subject: { ...worst.subject, apart } };
}

function* describe(stencil: StackStencil, gap: BareGap): Iterable<FindingDraft> {
  const { earlier, later, width, closed, onEarlier, onLater } = gap;
  const [first, second] = [stencil.stack.layers[earlier], stencil.stack.layers[later]];
  if (!first || !second) return;
  const { slip } = stencil.limits;
  const [wide, allowed] = [width, slip].map(formatMillimetres);
  const [one, other] = quoted([first.sheet.layer.name, second.sheet.layer.name]);
  yield {
    message: `Gap ${closed ? 'up to' : 'of'} ${wide} between ${one} and ${other}: within the ${allowed} a sheet may slip, so it looks uneven.`,
    detail:
      `A sheet that slips by ${allowed} closes the gap or makes it twice as wide. Extend ${quotedName(first)} under ` +
      `${quotedName(second)}, set the two farther apart, or lower limits.slip in tombolo.json if you register more ` +
      'exactly.',
    span: spanOnEdge(stencil, first, onEarlier, onLater),
    ...inLayer(first.sheet),
    at: interpolate(onEarlier, onLater, 0.5),
    measure: { value: width, limit: slip, unit: 'mm' },
    related: [relatedOnEdge(stencil, second, onLater, `Opposite edge, in ${other}`, onEarlier)],
    subject: { kind: 'gap', earlier: first, later: second, gap },
  };
}
