/** Whether a stack may be cut: what the checks found that would spoil it. */
import type { Report } from '../report/report';

export interface ErrorsLeft {
  readonly count: number;
  /** What the first one says; undefined where there is none, or none that is about a drawing. */
  readonly first: string | undefined;
}

/** @param reports of all the files that the stack is cut from */
export function errorsLeft(reports: readonly Report[]): ErrorsLeft {
  const errors = reports.flatMap(({ complete }) => complete.filter(({ severity }) => severity === 'error'));
  const faults = reports[0]?.project?.report.faults.filter(({ severity }) => severity === 'error') ?? [];
  return { count: errors.length + faults.length, first: errors[0]?.message };
}
