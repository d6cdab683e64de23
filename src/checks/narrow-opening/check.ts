import { defined } from '../../base/defined';
import { formatMillimetres } from '../../config/values';
import type { Sheet } from '../../sheet/types';
import { quoted } from '../../text/wording';
import { isCutOffAtEdge } from '../at-edge';
import type { StackCheck, StackStencil, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { type ShownPart, shownThinOpenings } from '../later-paint';
import { HAIRLINE, isSpeckOpening } from '../specks';
import { describeThinPart } from '../thin-part';
import { byOpening, inOrder, stepsOf } from './groups';

/**
 * In limits: a tip that goes no farther beyond the last disc that fits is rounded off by the beam, the knife or the paint
 * itself; common practice, no source. At the usual 0.6 mm it is 1.3 mm, the corner of 22° (3/16 is the sine of its half).
 */
const ROUNDED = 13 / 6;

/** mm: a slot that is shorter and no wider than a hairline is a crack between outlines that nearly meet. */
const CRACK = 2;

/** Places where an opening is too narrow for paint to come through cleanly. */
export const narrowOpening: StackCheck = {
  meta: {
    id: 'narrow-opening',
    summary: 'An opening with a place too narrow to cut or to spray through.',
    outcome: 'leave a slot too narrow to paint',
    severity: 'warning',
    reads: 'stack',
    fixes: ['open-up', 'shorten-tip', 'close-slot'],
    cure: ({ layer }) => `Open up the narrow place in "${layer}"`,
    acceptable: true,
    afterFix: {
      refuses: true,
      family: 'thin-opening',
      unless: ['adds-opening'],
    },
    row: {
      wrong: 'paint clogs a slot, or creeps under the sheet and bleeds',
      click: 'widen it; close it; shorten the tip',
    },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      const parts = shownThinOpenings(stencil, sheet, (part) => isOwn(stencil, sheet, part));
      const rounded = parts.filter(({ shown }) => isRounded(stencil, shown));
      const cracks = parts.filter(({ shown }) => isCrack(shown));
      const told = new Set([...rounded, ...cracks]);
      const others = parts.filter((each) => !told.has(each));
      for (const group of byOpening(stencil, sheet, others)) {
        yield* describeGroup(stencil, sheet, group);
      }
      if (rounded.length > 0) yield describeRounded(stencil, sheet, rounded);
      yield* describeCracks(stencil, sheet, cracks);
    }
  },
};

/** Whether no other finding tells of it. */
function isOwn(stencil: StackStencil, sheet: Sheet, part: ShownPart['part']): boolean {
  if (part.kind === 'whole' || isCutOffAtEdge(stencil, sheet, part)) return false;
  return !isSpeckOpening(stencil, sheet, sheet.openings[part.polygon]);
}

function isRounded({ limits }: Stencil, { kind, reach }: ShownPart['shown']): boolean {
  return kind === 'tip' && reach <= ROUNDED * limits.opening;
}

function isCrack({ kind, cutWidth, length }: ShownPart['shown']): boolean {
  return kind === 'neck' && cutWidth <= HAIRLINE && length < CRACK;
}

/** Told at the narrowest slot, which is widened first, or at the longest tip where there is none. */
function* describeGroup(stencil: Stencil, sheet: Sheet, group: readonly ShownPart[]): Iterable<FindingDraft> {
  const tips = inOrder(
    group.filter(({ part }) => part.kind !== 'neck'),
    ({ shown }) => -stepsOf(shown.reach),
  );
  const slots = inOrder(
    group.filter(({ part }) => part.kind === 'neck'),
    ({ shown }) => stepsOf(shown.cutWidth),
  );
  const apart = [...slots, ...tips].map((each) => describe(stencil, sheet, each));
  const [worst, ...others] = apart;
  if (!worst) return;
  if (others.length === 0) return yield worst;
  const { subject } = worst;
  if (subject?.kind !== 'thin') return;
  yield {
    ...worst,
    message: `${worst.message.replace(/ or bleed\.$/, '.')} ${others.length} more in this opening.`,
    related: [
      ...worst.related,
      ...others.map(({ span, at, subject: other, measure }) => ({
        message:
          other?.kind === 'thin' && other.part.kind !== 'neck'
            ? 'A tip too fine to paint'
            : `Only ${formatMillimetres(measure?.value ?? 0)} wide here`,
        span,
        ...(at && { at }),
      })),
    ],
    subject: { ...subject, apart },
  };
}

function describe(stencil: Stencil, sheet: Sheet, { part, shown }: ShownPart): FindingDraft {
  const { opening: limit, material } = stencil.limits;
  const [width, reach, least] = [shown.cutWidth, shown.reach, limit].map(formatMillimetres);
  return describeThinPart(stencil, sheet, part, {
    limit,
    shown,
    message:
      part.kind === 'neck'
        ? `Slot only ${width} wide (minimum ${least} for ${material}): paint will clog it or bleed.`
        : `Tip too fine to paint: last ${reach} narrower than ${least} (minimum for ${material}).`,
    detail:
      'Paint clogs in a narrower slot, or creeps under the sheet beside it and bleeds. Widen it to ' +
      `${least}, or close it where the line may end. If your paint gets through less, lower limits.opening in ` +
      'tombolo.json.',
  });
}

/** Corner points of one layer, told at the longest. */
function describeRounded(stencil: Stencil, sheet: Sheet, tips: readonly ShownPart[]): FindingDraft {
  const { opening: limit, material } = stencil.limits;
  const longestFirst = inOrder(tips, ({ shown }) => -stepsOf(shown.reach));
  const longest = defined(longestFirst[0]);
  const [reach, least] = [longest.shown.reach, limit].map(formatMillimetres);
  const [name] = quoted([sheet.layer.name]);
  const finding = describeThinPart(stencil, sheet, longest.part, {
    severity: 'hint',
    limit,
    shown: longest.shown,
    message:
      tips.length === 1
        ? `Tip rounds off: last ${reach} narrower than ${least} (minimum for ${material}).`
        : `Tips round off: last ${reach} at most narrower than ${least} (minimum for ${material}), ${tips.length} in ${name}.`,
    detail:
      'A beam, a knife and the paint itself round off so short a tip: the print shows the same shape with a blunter corner. ' +
      'Leave it, or widen or shorten it where the sharp corner matters.',
  });
  const others = longestFirst.slice(1).map((each) => describe(stencil, sheet, each));
  const related = others.map(({ span, at }) => ({ message: 'This tip rounds off, too', span, ...(at && { at }) }));
  return { ...finding, related: [...finding.related, ...related] };
}

/** Cracks of one layer, told at the widest. */
function* describeCracks(stencil: Stencil, sheet: Sheet, cracks: readonly ShownPart[]): Iterable<FindingDraft> {
  const [widest, ...others] = inOrder(cracks, ({ shown }) => -stepsOf(shown.cutWidth));
  if (!widest) return;
  const { opening: limit } = stencil.limits;
  const [width, least] = [widest.shown.cutWidth, limit].map(formatMillimetres);
  const [name] = quoted([sheet.layer.name]);
  const finding = describeThinPart(stencil, sheet, widest.part, {
    severity: 'hint',
    limit,
    shown: widest.shown,
    message:
      others.length === 0
        ? `Crack only ${width} wide (minimum ${least}): two outlines nearly meet. Nothing of it is seen.`
        : `Cracks of up to ${width} (minimum ${least}), ${cracks.length} in ${name}: outlines nearly meet. None is seen.`,
    detail:
      `A slot no wider than ${formatMillimetres(HAIRLINE)} and shorter than ${formatMillimetres(CRACK)} lets no paint through, ` +
      'and the print looks the same without it. Leave it, or widen it where it is meant to be seen.',
  });
  const related = others.map(({ part, shown }) => {
    const { span, at } = describe(stencil, sheet, { part, shown });
    return { message: 'Another crack', span, ...(at && { at }) };
  });
  yield { ...finding, related: [...finding.related, ...related] };
}
