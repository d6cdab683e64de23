/** `--only` and `--skip`: which checks are told of. All are run: acceptances of the others are not idle for that. */
import { InvalidArgumentError } from 'commander';
import { RULES } from '../../format/rules';
import { nearestWord } from '../../text/nearest-word';

const IDS = RULES.map(({ id }) => id);

/** Checks in a list with commas between; the option may be given again. */
export function parseChecks(text: string, before: readonly string[] = []): string[] {
  return [...before, ...text.split(',').map((part) => parseCheck(part.trim()))];
}

/** The id of a check. */
export function parseCheck(text: string): string {
  if (IDS.includes(text)) return text;
  const near = nearestWord(text, IDS);
  throw new InvalidArgumentError(
    near === undefined ? `No check is called that: they are ${IDS.join(', ')}.` : `Did you mean ${near}?`,
  );
}

/** Whether the findings of a check are told. */
export function isChosen(
  check: string,
  { only, skip }: { only?: readonly string[]; skip?: readonly string[] },
): boolean {
  return (only === undefined || only.includes(check)) && !(skip ?? []).includes(check);
}
