/** JSON whose text no terminal and no build service obeys, though it is the same to whoever parses it. */

/** Beyond what `JSON.stringify` escapes by itself: all that is not seen, and the beginnings of commands in logs. */
const OBEYED =
  /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufff9-\ufffb]|\udb40[\udc00-\udc7f]|##(?=\[|vso\[)/g;

/** @param indent blanks for each level; 0 for a single line */
export function jsonText(value: unknown, indent = 2): string {
  return `${JSON.stringify(value, undefined, indent).replace(OBEYED, escaped)}\n`;
}

function escaped(characters: string): string {
  const units = Array.from({ length: characters.length }, (_, at) => characters.charCodeAt(at));
  return units.map((unit) => `\\u${unit.toString(16).padStart(4, '0')}`).join('');
}
