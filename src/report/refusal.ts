/** Why something cannot be changed as it was asked for, and what there is instead. Plain data. */

export interface Refusal<Change> {
  /** One short sentence, of at most 120 characters. */
  readonly reason: string;
  /** What to do first, as a sentence: 'Extend "Water" under "Fur" first.' */
  readonly first?: string;
  /**
   * The very change that was asked for: proven to do what it promises, but for the new findings that it brings. Never a
   * change that alters the picture outside its place, or does not mend what it is for.
   */
  readonly anyway?: Change;
}

/** A change that was proven, or why there is none. */
export type Result<Change> = Change | Refusal<Change>;

export function isRefusal<Change extends object>(result: Result<Change>): result is Refusal<Change> {
  return 'reason' in result;
}

/** The sentence alone, where nothing else is known. */
export function refuse(reason: string): Refusal<never> {
  return { reason };
}

/** Why not, and what to do first where that is known: one or two sentences. */
export function whyNot({ reason, first }: Pick<Refusal<unknown>, 'reason' | 'first'>): string {
  return first === undefined ? reason : `${reason} ${first}`;
}

/** Makes of what was proven what is made of it, and the same of what may be had anyway. */
export function mapResult<From extends object, To>(result: Result<From>, make: (change: From) => To): Result<To> {
  if (!isRefusal(result)) return make(result);
  const { anyway, ...why } = result;
  return { ...why, ...(anyway && { anyway: make(anyway) }) };
}
