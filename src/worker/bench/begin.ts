/** What turns an SVG into a stencil where no `tombolo.json` does: an attribute on the root. */

import { askedSizeEdits } from '../../engine/index';
import type { Beginning } from '../../protocol/index';
import type { TextEdit } from '../../text/text';
import type { CheckedDocument } from '../documents/checked-document';

/**
 * @param asked how wide the artwork is to be cut, as the artist wrote it
 * @returns null where the document has no root to begin with
 */
export function beginningFor(checked: CheckedDocument, asked?: string): Beginning | null {
  const edits = beginEdits(checked);
  const { version, stencil, report } = checked;
  const { width, sizeStated } = report.drawing;
  const sizeEdits = asked === undefined ? undefined : askedSizeEdits(report.drawing, asked);
  return edits ? { version, edits, stencil, width, sizeStated, ...(sizeEdits && { sizeEdits }) } : null;
}

/** @returns no edits where the document is a stencil already, undefined where it has no root to mark */
function beginEdits({ report, stencil }: CheckedDocument): readonly TextEdit[] | undefined {
  const root = report.drawing.document.root;
  if (root?.localName !== 'svg') return undefined;
  if (stencil) return [];
  const readings = new Set(report.sheets.map(({ layer }) => layer.reading));
  const [only] = readings;
  // Layers that are read in different ways keep being detected one by one.
  const reading = readings.size === 1 ? only : 'detect';
  const at = root.nameSpan.to;
  return [{ span: { from: at, to: at }, text: ` data-tombolo-reading="${reading}"` }];
}
