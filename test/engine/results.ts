/** What was proven, or an error with the reason why it was not. */
import { isRefusal, type Result, whyNot } from '../../src/report/refusal';

export function proven<Change extends object>(result: Result<Change> | undefined): Change {
  if (!result) throw new Error('nothing was tried');
  if (isRefusal(result)) throw new Error(whyNot(result));
  return result;
}

export function reasonOf(result: Result<object> | undefined): string | undefined {
  return result && isRefusal(result) ? result.reason : undefined;
}
