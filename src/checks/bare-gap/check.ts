import { formatMillimetres } from '../../config/values';
import { interpolate } from '../../geometry/base/vector';
import type { BareGap } from '../../stack/index';
import type { StackCheck, StackStencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer } from '../places';
import { quoted, relatedOnEdge, spanOnEdge } from '../stack-places';

/** Bare ground between two colours that is narrower than the slip. */
export const bareGap: StackCheck = {
  meta: {
    id: 'bare-gap',
    summary: 'Bare ground between neighbouring colours.',
    outcome: 'leave bare ground between two colours',
    severity: 'warning',
    reads: 'stack',
    fixes: ['spread-colour'],
    acceptable: true,
    afterFix: { refuses: true, family: 'seam' },
    row: { wrong: 'bare ground shows between two colours that belong together', click: 'spread the earlier colour' },
  },
  *run(stencil) {
    const { stack, limits, file } = stencil;
    for (const gap of stack.seams(limits.slip).gaps) {
      if (stack.layers[gap.earlier]?.file === file) yield* describe(stencil, gap);
    }
  },
};

function* describe(stencil: StackStencil, gap: BareGap): Iterable<FindingDraft> {
  const { earlier, later, width, closed, onEarlier, onLater } = gap;
  const [first, second] = [stencil.stack.layers[earlier], stencil.stack.layers[later]];
  if (!first || !second) return;
  const { slip } = stencil.limits;
  yield {
    message:
      `Bare ground ${closed ? 'up to ' : ''}${formatMillimetres(width)} wide between ${quoted(first)} and ` +
      `${quoted(second)}; a slip of ${formatMillimetres(slip)}, which must be reckoned with, closes it or ` +
      'makes it twice ' +
      'as wide. Spread the earlier colour under its neighbour, set them farther apart, or lower limits.slip.',
    span: spanOnEdge(stencil, first, onEarlier, onLater),
    ...inLayer(first.sheet),
    at: interpolate(onEarlier, onLater, 0.5),
    measure: { value: width, limit: slip, unit: 'mm' },
    related: [relatedOnEdge(stencil, second, onLater, `The edge of ${quoted(second)} that faces it`, onEarlier)],
    subject: { kind: 'gap', earlier: first, later: second, gap },
  };
}
