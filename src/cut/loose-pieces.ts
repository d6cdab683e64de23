/** Pieces that fall out when a sheet is cut, and that the artist keeps on purpose: laid by hand where they belong. */
import type { Report } from '../report/report';
import type { Piece } from '../sheet/types';

export interface LoosePiece {
  /** "2.1": the first of sheet 2. The same on the sheet, in the picture and on the positioning drawing. */
  readonly label: string;
  /** The layer's number in the stack, from 0. */
  readonly layer: number;
  readonly piece: Piece;
}

export interface LoosePieces {
  /** Those whose finding was accepted. */
  readonly kept: readonly LoosePiece[];
  /** How many fall out although nobody said that they are kept. */
  readonly others: number;
}

/** Of the whole stack that the report is part of. */
export function loosePieces(report: Report): LoosePieces {
  const reports = report.project ? [...report.project.report.files.values()] : [report];
  const found = new Set(
    reports.flatMap(({ complete }) =>
      complete.flatMap(({ layerId, subject }) =>
        subject?.kind === 'island' ? [placeOf(layerId ?? '', subject.piece)] : [],
      ),
    ),
  );
  let others = 0;
  const kept = report.stack.layers.flatMap(({ sheet }, layer) => {
    const islands = sheet.pieces.filter(({ island }) => island);
    const own = islands.filter((piece) => !found.has(placeOf(sheet.layer.id, piece)));
    others += islands.length - own.length;
    return own.map((piece, i): LoosePiece => ({ label: `${layer + 1}.${i + 1}`, layer, piece }));
  });
  return { kept, others };
}

function placeOf(layer: string, { label }: Piece): string {
  return `${layer} ${label.x} ${label.y}`;
}
