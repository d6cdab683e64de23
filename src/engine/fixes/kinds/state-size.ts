import { shortSides } from '../../../config/values';
import { mapResult } from '../../../report/refusal';
import type { FixKind } from '../kind';
import { sizeEdits } from '../root-attributes';
import { verify } from '../verify';

/** Writes the size that is guessed now, so that every measure stays as it is. */
export const stateSize: FixKind = {
  kind: 'state-size',
  scope: 'file',
  safe: true,
  effects: [],
  preferred: true,
  offer: ({ drawing: { width, height } }) => `State the size: ${shortSides(width, height)}`,
  prove: (report, finding) => {
    const edits = sizeEdits(report.drawing, 1);
    const proof = verify(report, edits, { gone: [finding], within: new Map() });
    return mapResult(proof, ({ brings }) => ({ edits, brings }));
  },
};
