import { cutIslandAway as cutAway } from '../../../edits/bridge/widen-bridge';
import { type FixKind, proveAttempt } from '../kind';

/** The island becomes a part of the opening round it, and its place is painted. Where that is not seen, see `cut-covered.ts`. */
export const cutIslandAway: FixKind = {
  kind: 'cut-island-away',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: false,
  offer: (_, { subject }) =>
    subject?.kind === 'island' && !subject.cover ? 'Remove the island (its area will be painted)' : undefined,
  prove: (report, finding) => {
    const { subject } = finding;
    if (subject?.kind !== 'island') return undefined;
    const { sheet, piece } = subject;
    return proveAttempt(report, sheet, { outcome: cutAway(sheet, piece), within: [piece.polygon], gone: [finding] });
  },
};
