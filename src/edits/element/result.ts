/** What surgery on the text gives: edits of the document's text, or one sentence that says why it cannot be done. */
import type { TextEdit } from '../../text/text';
import type { Strip } from '../strip/strip';

/** A sentence that says why something cannot be done. */
export interface EditRefusal {
  readonly refusal: string;
  /** Those that it may be about, of the strips that were to be cut; any of them where it is not said. */
  readonly strips?: readonly Strip[];
}

export type EditResult = { readonly edits: readonly TextEdit[] } | EditRefusal;

/** All edits of several outcomes; or the first refusal, with the strips of all, where each says which ones. */
export function mergeResults(outcomes: readonly EditResult[]): EditResult {
  const refusals = outcomes.filter((outcome) => 'refusal' in outcome);
  const [first] = refusals;
  if (!first) return { edits: outcomes.flatMap((outcome) => ('edits' in outcome ? outcome.edits : [])) };
  const strips = refusals.flatMap((each) => each.strips ?? []);
  return refusals.every((each) => each.strips) ? { refusal: first.refusal, strips } : { refusal: first.refusal };
}
