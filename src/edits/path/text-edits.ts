/**
 * Edits of text from pieces: a new arrangement of old and new text as edits that leave as much as possible where it was,
 * and two sets of edits, one after the other, as one set.
 */
import type { Span, TextEdit } from '../../text/text';
import type { TextPiece } from './path-writer';

/** With more copied stretches than this, finding the best ones to keep would take too long; runs in order are kept. */
const MAX_PIECES = 3000;

/**
 * Edits, in offsets of `text`, after which the stretch `within` holds the pieces in order. The heaviest set of copied
 * stretches that are in their old order stays in place; the others are moved, byte for byte. New text goes where the
 * old stood that it stands for, so that each edit is no longer than what has changed.
 */
export function spliceText(text: string, within: Span, pieces: readonly TextPiece[]): TextEdit[] {
  const kept = heaviestInOrder(pieces);
  const edits: TextEdit[] = [];
  let done = kept.size > 0 ? leadingEnd(text, within, pieces, kept) : within.from;
  let pending = '';
  pieces.forEach((piece, index) => {
    const content = textOf(piece, text);
    const span = kept.has(index) ? placeOf(piece) : undefined;
    if (!span) {
      pending += content;
      return;
    }
    addEdit(edits, text, { from: done, to: span.from }, pending);
    addEdit(edits, text, span, content);
    done = span.to;
    pending = '';
  });
  const trailing = /\s*$/.exec(text.slice(done, within.to))?.[0].length ?? 0;
  addEdit(edits, text, { from: done, to: within.to - trailing }, pending);
  return edits;
}

/** Where a piece stands, or what it stands for, in the old text. */
function placeOf(piece: TextPiece): Span | undefined {
  return piece.kind === 'copy' ? piece.span : piece.insteadOf;
}

function textOf(piece: TextPiece, text: string): string {
  return piece.kind === 'copy' ? text.slice(piece.span.from, piece.span.to) : piece.text;
}

/** Blanks before the first command stay. */
function leadingEnd(text: string, within: Span, pieces: readonly TextPiece[], kept: ReadonlySet<number>): number {
  const first = pieces.find((_, index) => kept.has(index));
  const place = first && placeOf(first);
  if (!place) return within.from;
  const blank = /^\s*/.exec(text.slice(within.from, place.from))?.[0].length ?? 0;
  return within.from + blank;
}

/** What both ends have in common stays; two edits never begin at one place. */
function addEdit(edits: TextEdit[], text: string, span: Span, replacement: string): void {
  const old = text.slice(span.from, span.to);
  if (old === replacement) return;
  const [head, tail] = sharedEnds(old, replacement);
  const edit = {
    span: { from: span.from + head, to: span.to - tail },
    text: replacement.slice(head, replacement.length - tail),
  };
  const last = edits.at(-1);
  if (last?.span.to !== edit.span.from) edits.push(edit);
  else edits[edits.length - 1] = { span: { from: last.span.from, to: edit.span.to }, text: last.text + edit.text };
}

/** How many characters two texts have in common at their starts and at their ends; no number or line end is parted. */
function sharedEnds(a: string, b: string): [number, number] {
  const shortest = Math.min(a.length, b.length);
  let head = 0;
  while (head < shortest && a[head] === b[head]) head += 1;
  while (head > 0 && isOneThing(a, head) + isOneThing(b, head) > 0) head -= 1;
  let tail = 0;
  while (tail < shortest - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail += 1;
  while (tail > 0 && isOneThing(a, a.length - tail) + isOneThing(b, b.length - tail) > 0) tail -= 1;
  return [head, tail];
}

/** 1 where the characters before and after a place belong together. */
function isOneThing(text: string, at: number): number {
  return /^(?:[\d.][\d.]|\r\n|[-+][\d.]|[\ud800-\udbff][\udc00-\udfff])$/.test(text.slice(at - 1, at + 1)) ? 1 : 0;
}

/** Beside one character of the author's, what new text stands for weighs nothing. */
const STANDS_FOR = 1e-6;

/** The heaviest increasing run of places in the old text, weighed by what of it is copied. */
function heaviestInOrder(pieces: readonly TextPiece[]): Set<number> {
  const placed = pieces.flatMap((piece, index) => {
    const span = placeOf(piece);
    return span ? [{ index, span, own: piece.kind === 'copy' ? span.to - span.from : STANDS_FOR }] : [];
  });
  const reach = placed.length > MAX_PIECES ? 64 : placed.length;
  const best = placed.map(({ own }) => ({ weight: own, previous: -1 }));
  placed.forEach(({ span, own }, at) => {
    for (let other = Math.max(0, at - reach); other < at; other += 1) {
      const before = placed[other];
      const weight = (best[other]?.weight ?? 0) + own;
      const follows = before !== undefined && before.span.to <= span.from;
      if (follows && weight > (best[at]?.weight ?? 0)) best[at] = { weight, previous: other };
    }
  });
  const kept = new Set<number>();
  let at = best.reduce((most, { weight }, index) => (weight > (best[most]?.weight ?? -1) ? index : most), 0);
  while (at >= 0 && placed[at]) {
    kept.add(placed[at]?.index ?? -1);
    at = best[at]?.previous ?? -1;
  }
  return kept;
}

/**
 * Two sets of edits as one.
 * @param second edits of the text that `first` makes of `text`
 */
export function composeEdits(text: string, first: readonly TextEdit[], second: readonly TextEdit[]): TextEdit[] {
  const middle = sortEdits(first);
  const pieces: TextPiece[] = [];
  let done = 0;
  for (const { span, text: inserted } of middle) {
    pieces.push({ kind: 'copy', span: { from: done, to: span.from } }, { kind: 'new', text: inserted });
    done = span.to;
  }
  pieces.push({ kind: 'copy', span: { from: done, to: text.length } });
  const composed = sortEdits(second).reduceRight((parts, edit) => editPieces(parts, edit), pieces);
  return spliceText(
    text,
    { from: 0, to: text.length },
    composed.filter((piece) => sizeOf(piece) > 0),
  );
}

function sortEdits(edits: readonly TextEdit[]): TextEdit[] {
  return [...edits].sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to);
}

function sizeOf(piece: TextPiece): number {
  return piece.kind === 'new' ? piece.text.length : piece.span.to - piece.span.from;
}

function editPieces(pieces: readonly TextPiece[], { span, text }: TextEdit): TextPiece[] {
  const before = cutPieces(pieces, 0, span.from);
  const after = cutPieces(pieces, span.to, Infinity);
  return [...before, { kind: 'new', text }, ...after];
}

/** What of the pieces, laid end to end, lies between two places. */
function cutPieces(pieces: readonly TextPiece[], from: number, to: number): TextPiece[] {
  const kept: TextPiece[] = [];
  let at = 0;
  for (const piece of pieces) {
    const size = sizeOf(piece);
    const [start, end] = [Math.max(0, from - at), Math.min(size, to - at)];
    at += size;
    if (end <= start) continue;
    kept.push(
      piece.kind === 'new'
        ? { kind: 'new', text: piece.text.slice(start, end) }
        : { kind: 'copy', span: { from: piece.span.from + start, to: piece.span.from + end } },
    );
  }
  return kept;
}
