/** Where a value without a closing quote may be taken to end. */
import type { Span } from '../text/text';
import { isBlank } from './number-reader';

/** An attribute whose end is not seen yet. */
export interface PendingAttribute {
  readonly nameSpan: Span;
  /** -1 while no value is seen. */
  valueFrom: number;
  valueTo: number;
}

/** The end of `text` between `from` and `to` without the blanks behind it. */
export function blanksTrimmed(text: string, from: number, to: number): number {
  let end = to;
  while (end > from && isBlank(text.charCodeAt(end - 1))) end -= 1;
  return end;
}

/** For a value such as `M0 0 fill=`: where the name in it begins, and where what stands before it ends. */
export function valueBeforeSwallowedName(
  text: string,
  from: number,
  to: number,
): { valueTo: number; nameFrom: number } | undefined {
  const equals = blanksTrimmed(text, from, to) - 1;
  if (equals < from || text[equals] !== '=') return undefined;
  const nameTo = blanksTrimmed(text, from, equals);
  let nameFrom = nameTo;
  while (nameFrom > from && isNameLike(text.charCodeAt(nameFrom - 1))) nameFrom -= 1;
  if (nameFrom === nameTo || nameFrom === from || !isBlank(text.charCodeAt(nameFrom - 1))) return undefined;
  return { valueTo: blanksTrimmed(text, from, nameFrom), nameFrom };
}

/** Letters, digits, and `-`, `.`, `:`, `_`, or any character beyond ASCII. */
function isNameLike(code: number): boolean {
  const isLetter = (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
  return isLetter || (code >= 48 && code <= 58) || code === 45 || code === 46 || code === 95 || code > 127;
}
