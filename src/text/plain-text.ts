/** Words of a file, made safe to show: for the editor's lists and titles, for the bench, and as a ground for the rest. */

/**
 * Controls (a terminal would obey them), line separators, marks that turn the direction of writing (UAX 9), annotations
 * and tags that nobody sees.
 */
const UNSHOWABLE =
  /[\p{Cc}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufff9-\ufffb\u{e0000}-\u{e007f}]+/gu;

/** Halves of characters, which no encoding can write. */
const HALVES = /\p{Cs}/gu;

/** The text in one line that neither moves the cursor nor colours nor turns anything. */
export function oneLine(text: string): string {
  return text.replace(UNSHOWABLE, ' ').replace(HALVES, '\ufffd').trim();
}

/** A text of many lines as it is, with the picture of each control and a mark for what else is not seen. */
export function showable(text: string): string {
  const shown = (unseen: string): string => (/[\t\n\r]/.test(unseen) ? unseen : picturesOf(unseen));
  return text.replace(HALVES, '\ufffd').replace(new RegExp(UNSHOWABLE, 'gu'), (run) => [...run].map(shown).join(''));
}

/** Unicode, "Control Pictures": ␛ stands for the escape. */
function picturesOf(unseen: string): string {
  const code = unseen.codePointAt(0) ?? 0;
  if (code === 0x7f) return '\u2421';
  return code < 0x20 ? String.fromCodePoint(0x2400 + code) : '\ufffd';
}
