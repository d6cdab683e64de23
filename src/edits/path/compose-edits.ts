/** Two sets of edits, one after the other, as one set. */
import type { TextEdit } from '../../text/text';
import type { TextPiece } from './path-writer';
import { spliceText } from './splice-text';

/** @param second edits of the text that `first` makes of `text` */
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
