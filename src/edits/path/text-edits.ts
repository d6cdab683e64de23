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
 * stretches that are in their old order stays in place; the others are moved, byte for byte.
 */
export function spliceText(text: string, within: Span, pieces: readonly TextPiece[]): TextEdit[] {
  const kept = heaviestInOrder(pieces);
  const edits: TextEdit[] = [];
  let done = kept.size > 0 ? leadingEnd(text, within, pieces, kept) : within.from;
  let pending = '';
  pieces.forEach((piece, index) => {
    if (piece.kind === 'copy' && kept.has(index)) {
      addEdit(edits, text, { from: done, to: piece.span.from }, pending);
      done = piece.span.to;
      pending = '';
    } else pending += piece.kind === 'copy' ? text.slice(piece.span.from, piece.span.to) : piece.text;
  });
  const trailing = /\s*$/.exec(text.slice(done, within.to))?.[0].length ?? 0;
  addEdit(edits, text, { from: done, to: within.to - trailing }, pending);
  return edits;
}

/** Blanks before the first command stay. */
function leadingEnd(text: string, within: Span, pieces: readonly TextPiece[], kept: ReadonlySet<number>): number {
  const first = pieces.findIndex((_, index) => kept.has(index));
  const piece = pieces[first];
  if (piece?.kind !== 'copy') return within.from;
  const blank = /^\s*/.exec(text.slice(within.from, piece.span.from))?.[0].length ?? 0;
  return within.from + blank;
}

function addEdit(edits: TextEdit[], text: string, span: Span, replacement: string): void {
  if (text.slice(span.from, span.to) !== replacement) edits.push({ span, text: replacement });
}

/** The heaviest increasing run of copied stretches, weighed by their length. */
function heaviestInOrder(pieces: readonly TextPiece[]): Set<number> {
  const copies = pieces.flatMap((piece, index) => (piece.kind === 'copy' ? [{ index, span: piece.span }] : []));
  const reach = copies.length > MAX_PIECES ? 64 : copies.length;
  const best = copies.map(({ span }) => ({ weight: span.to - span.from, previous: -1 }));
  copies.forEach(({ span }, at) => {
    for (let other = Math.max(0, at - reach); other < at; other += 1) {
      const before = copies[other];
      const weight = (best[other]?.weight ?? 0) + span.to - span.from;
      const follows = before !== undefined && before.span.to <= span.from;
      if (follows && weight > (best[at]?.weight ?? 0)) best[at] = { weight, previous: other };
    }
  });
  const kept = new Set<number>();
  let at = best.reduce((most, { weight }, index) => (weight > (best[most]?.weight ?? -1) ? index : most), 0);
  while (at >= 0 && copies[at]) {
    kept.add(copies[at]?.index ?? -1);
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
