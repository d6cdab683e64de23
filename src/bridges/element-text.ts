/** The author's way of setting out elements. */

/** The line end and blanks before an element, if it stands on a line of its own. */
export function indentBefore(text: string, from: number): string {
  return /(?:\r?\n)[ \t]*$/.exec(text.slice(0, from))?.[0] ?? '';
}
