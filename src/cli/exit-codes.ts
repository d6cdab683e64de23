/** What the process ends with. Scripts rely on these numbers. */
export const EXIT_CODES = {
  /** Nothing at warning or above beyond the allowance. */
  clean: 0,
  findings: 1,
  /** Bad arguments, or a file that could not be read or written. */
  failed: 2,
} as const;

export type ExitCode = (typeof EXIT_CODES)[keyof typeof EXIT_CODES];

export function worseOf(first: ExitCode, second: ExitCode): ExitCode {
  return first > second ? first : second;
}
