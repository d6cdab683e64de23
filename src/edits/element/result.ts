/** What surgery on the text gives: edits of the document's text, or one sentence that says why it cannot be done. */
import type { TextEdit } from '../../text/text';

export type EditResult = { readonly edits: readonly TextEdit[] } | { readonly refusal: string };

/** All edits of several outcomes, or the first refusal. */
export function mergeResults(outcomes: readonly EditResult[]): EditResult {
  const edits: TextEdit[] = [];
  for (const outcome of outcomes) {
    if ('refusal' in outcome) return outcome;
    edits.push(...outcome.edits);
  }
  return { edits };
}
