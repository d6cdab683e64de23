/** A place as people read it: line and column, counted from one. */
import type { TextPosition } from '../report/generator';

export function placeText({ start }: { readonly start: TextPosition }): string {
  return `${start.line + 1}:${start.character + 1}`;
}
