/** Colours for the terminal, and when to use them. */
import { createColors } from 'picocolors';
import type { Colours } from '../format/format';

export interface ColourCircumstances {
  /** `--color` or `--no-color`, if given. */
  readonly wanted: boolean | undefined;
  readonly isTerminal: boolean;
  readonly environment: Readonly<Record<string, string | undefined>>;
}

/** The option wins, then NO_COLOR (no-color.org), then FORCE_COLOR, then whether a capable terminal listens. */
export function wantsColour({ wanted, isTerminal, environment }: ColourCircumstances): boolean {
  if (wanted !== undefined) return wanted;
  if (environment.NO_COLOR) return false;
  const forced = environment.FORCE_COLOR;
  if (forced !== undefined) return forced !== '0' && forced !== 'false';
  return isTerminal && environment.TERM !== 'dumb';
}

export function coloursFor(circumstances: ColourCircumstances): Colours {
  return createColors(wantsColour(circumstances));
}
