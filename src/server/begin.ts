/** The one click that turns an SVG into a stencil: an attribute on the root that states how the file is read. */
import type { TextEdit } from '../text';
import type { CheckedDocument } from './checked-document';

/** @returns no edits where the document is a stencil already, undefined where it has no root to mark */
export function beginEdits({ report, stencil }: CheckedDocument): readonly TextEdit[] | undefined {
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
