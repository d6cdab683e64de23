import { check } from '../../src/engine/index';
import { isRefusal, type Result, whyNot } from '../../src/report/refusal';
import type { Report } from '../../src/report/report';

/** Reports hold on to all that was worked out for them. */
const KEPT = 16;

/** Checks a text once, however often it is asked for: what is asked of a report does not change it. */
export function checksOnce(): (text: string) => Report {
  const reports = new Map<string, Report>();
  return (text) => {
    const report = reports.get(text) ?? check(text);
    reports.delete(text);
    reports.set(text, report);
    const [oldest] = reports.keys();
    if (reports.size > KEPT && oldest !== undefined) reports.delete(oldest);
    return report;
  };
}

/** What was proven, or an error with the reason why it was not. */

export function proven<Change extends object>(result: Result<Change> | undefined): Change {
  if (!result) throw new Error('nothing was tried');
  if (isRefusal(result)) throw new Error(whyNot(result));
  return result;
}

export function reasonOf(result: Result<object> | undefined): string | undefined {
  return result && isRefusal(result) ? result.reason : undefined;
}
