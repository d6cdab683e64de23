/** How titles and refusals name the faults that a change brings. */
import type { Finding } from '../../checks/finding';
import { metaOf } from '../metas';

/** "leave a loose tongue and a slot too narrow to paint": each kind of fault once, after "would". */
export function outcomeOf(findings: readonly Pick<Finding, 'check'>[]): string {
  const outcomes = new Set(findings.map(({ check }) => metaOf(check)?.outcome ?? `bring a new ${check}`));
  return [...outcomes].reduce((all, each) => `${all} and ${verbOf(all) === verbOf(each) ? afterVerb(each) : each}`);
}

/** "leaves a loose tongue", as a title says it of a change. */
export function outcomeInTitle(findings: readonly Pick<Finding, 'check'>[]): string {
  return outcomeOf(findings)
    .split(' and ')
    .map((part) => part.replace(/^(?:leave|bring|make)\b/, (verb) => `${verb}s`))
    .join(' and ');
}

const verbOf = (outcome: string): string => outcome.slice(0, outcome.indexOf(' '));
const afterVerb = (outcome: string): string => outcome.slice(outcome.indexOf(' ') + 1);
