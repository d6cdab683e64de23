/**
 * Checks that came to no end, as the engine's worker ended or failed. Each is tried once more, since a new worker may do
 * what an old one could not; then it is given up until something that it reads has changed.
 */
import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { type CheckInput, isSameInput } from './check-input';
import { rootName } from './config-notice';
import { SOURCE } from './diagnostics';
import { rangeOf } from './known-document';

const MOST_TRIES = 2;

export class LostChecks {
  private readonly lost = new Map<string, { readonly input: CheckInput; readonly times: number }>();

  /** @returns whether it is to be tried again */
  add(input: CheckInput): boolean {
    const before = this.of(input);
    const times = (before?.times ?? 0) + 1;
    this.lost.set(input.key, { input, times });
    return times < MOST_TRIES;
  }

  /** Whether nobody but the artist may ask for it again. */
  isGivenUp(input: CheckInput): boolean {
    return (this.of(input)?.times ?? 0) >= MOST_TRIES;
  }

  /** A check of the same documents came to its end, or nobody asks about them any more. */
  forget(key: string): void {
    this.lost.delete(key);
  }

  private of(input: CheckInput) {
    const known = this.lost.get(input.key);
    return known && isSameInput(known.input, input) ? known : undefined;
  }
}

/**
 * @param live the text that could not be checked
 * @param isChecked whether an earlier text was, whose findings are still shown
 */
export function lostNotice(live: TextDocument, isChecked: boolean): Diagnostic {
  const shown = isChecked ? 'What is shown was found in an earlier text.' : 'Nothing is known of it.';
  return {
    range: rangeOf(rootName(live.getText()), live),
    severity: DiagnosticSeverity.Warning,
    source: SOURCE,
    code: 'internal',
    message: `The check of this text stopped twice. ${shown} Edit it to check again.`,
  };
}
