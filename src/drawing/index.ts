/** From a markup tree to what a renderer would paint, in sheet millimetres. */
import { IDENTITY } from '../geometry/base/matrix';
import type { MarkupDocument } from '../markup/tree';
import { Budget } from './budget';
import { indexDocument } from './document-index';
import type { Drawing } from './types';
import * as messages from './messages';
import { OutlineCache } from './outline/outline-cache';
import { Painter } from './walk-tree';
import { Problems } from './problems';
import { readRootSize, type SizeOptions } from './viewport/root-size';
import { readStyleSheets } from './style/read-sheets';
import { Styles } from './style/styles';
import { SVG_NAMESPACE } from '../markup/query';

/**
 * Reads what the document paints (SVG 2, static). Never throws: what cannot be taken is a problem with its span.
 *
 * Shapes are not clipped to the frame, though a renderer shows nothing outside it: whether openings cross the sheet's
 * edge is for the checks to see. The clips of inner viewports are in force.
 * @param options width and height in mm override the size that the text states; one alone keeps the ratio.
 * @param earlier a drawing of an earlier state of the text: path data that both have is not read again.
 */
export function readDrawing(document: MarkupDocument, options: SizeOptions = {}, earlier?: Drawing): Drawing {
  const problems = new Problems();
  const { root } = document;
  if (!root || root.localName !== 'svg' || (root.namespace !== SVG_NAMESPACE && root.namespace !== '')) {
    const what = root ? `This is a ${root.localName}, not an SVG` : 'There is no svg element here';
    const span = root?.nameSpan ?? { from: 0, to: Math.min(1, document.text.length) };
    const message = `${what}: nothing can be cut from it. Wrap the drawing in <svg xmlns="${SVG_NAMESPACE}">.`;
    problems.add('unreadable-markup', 'error', message, span);
    const empty = { width: 0, height: 0, sizeStated: false, toMm: IDENTITY, shapes: [] };
    return { document, ...empty, problems: problems.list };
  }
  if (root.namespace === '') {
    problems.add(
      'unreadable-markup',
      'info',
      `The svg has no namespace, so browsers do not draw it; it is read as ` +
        `SVG here. Add xmlns="${SVG_NAMESPACE}".`,
      root.nameSpan,
    );
  }
  const index = indexDocument(root);
  for (const { span } of index.entityTexts) problems.add('unsupported', 'error', messages.ENTITY_ELEMENTS, span);
  const styles = new Styles(readStyleSheets(document, index.styleElements, problems));
  for (const note of styles.cascade.notes) {
    problems.add('unsupported', 'warning', note, index.styleElements[0]?.startTag ?? root.nameSpan);
  }
  const size = readRootSize(root, styles.declaredFor(root), options, problems);
  const outlines = new OutlineCache(earlier?.outlines ?? []);
  const services = { index, styles, problems, outlines, budget: new Budget(), mmPerPx: size.mmPerPx };
  const painter = new Painter(services, size);
  if (size.toMm) painter.paint(root);
  const { width, height, sizeStated } = size;
  const toMm = size.toMm ?? IDENTITY;
  const read = { shapes: painter.shapes, problems: problems.list, outlines: outlines.outlines };
  return { document, width, height, sizeStated, toMm, ...read };
}
