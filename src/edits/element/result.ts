/** What surgery on the text gives: edits of the document's text, or one sentence that says why it cannot be done. */
import type { TextEdit } from '../../text/text';

export type Outcome = { readonly edits: readonly TextEdit[] } | { readonly refusal: string };

/** All edits of several outcomes, or the first refusal. */
export function mergeOutcomes(outcomes: readonly Outcome[]): Outcome {
  const edits: TextEdit[] = [];
  for (const outcome of outcomes) {
    if ('refusal' in outcome) return outcome;
    edits.push(...outcome.edits);
  }
  return { edits };
}
