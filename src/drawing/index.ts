/** From a markup tree to what a renderer would paint, in sheet millimetres. */
import { IDENTITY } from '../geometry/base/matrix';
import { SVG_NAMESPACE } from '../markup/query';
import type { MarkupDocument } from '../markup/tree';
import { Budget } from './budget';
import { indexDocument } from './document-index';
import * as messages from './messages';
import { type CachedOutline, OutlineCache } from './outline/outline-cache';
import { Problems } from './problems';
import { readStyleSheets } from './style/read-sheets';
import { Styles } from './style/styles';
import type { Drawing } from './types';
import { readRootSize, type SizeOptions } from './viewport/root-size';
import { Painter } from './walk-tree';

/**
 * Reads what the document paints (SVG 2, static). Never throws: what cannot be taken is a problem with its span.
 *
 * Shapes are not clipped to the frame, though a renderer shows nothing outside it: whether openings cross the sheet's
 * edge is for the checks to see. The clips of inner viewports are in force.
 * @param options width and height in mm override the size that the text states; one alone keeps the ratio.
 */
export function readDrawing(document: MarkupDocument, options: SizeOptions = {}): Drawing {
  return readWith(document, options, new OutlineCache([]));
}

/** A drawing, with the outlines that were read for it, in the order of the text. */
export interface ReadDrawing {
  readonly drawing: Drawing;
  readonly outlines: readonly CachedOutline[];
}

/**
 * The same, for a text that is edited.
 * @param previous of a state of the text before an edit: path data that both have is not read again
 */
export function readDrawingIncrementally(
  document: MarkupDocument,
  options: SizeOptions,
  previous: ReadDrawing | undefined,
): ReadDrawing {
  const outlines = new OutlineCache(previous?.outlines ?? []);
  const drawing = readWith(document, options, outlines);
  return { drawing, outlines: outlines.outlines };
}

function readWith(document: MarkupDocument, options: SizeOptions, outlines: OutlineCache): Drawing {
  const problems = new Problems();
  const { root } = document;
  if (root?.localName !== 'svg' || (root.namespace !== SVG_NAMESPACE && root.namespace !== '')) {
    const span = root?.nameSpan ?? { from: 0, to: Math.min(1, document.text.length) };
    problems.add('unreadable-markup', 'error', messages.noSvg(root?.localName), span);
    return { ...emptyDrawing(document), problems: problems.list };
  }
  if (root.namespace === '') {
    problems.add('unreadable-markup', 'info', messages.NO_NAMESPACE, root.nameSpan);
  }
  const index = indexDocument(root);
  for (const { span } of index.entityTexts) problems.add('unsupported', 'error', messages.ENTITY_ELEMENTS, span);
  for (const { startTag } of index.scriptElements) problems.add('unsupported', 'info', messages.SCRIPT, startTag);
  for (const { startTag } of index.animations) problems.add('unsupported', 'info', messages.ANIMATION, startTag);
  const styles = new Styles(readStyleSheets(document, index.styleElements, problems));
  for (const note of styles.cascade.notes) {
    problems.add('unsupported', 'warning', { message: note }, index.styleElements[0]?.startTag ?? root.nameSpan);
  }
  const size = readRootSize(root, styles.declaredFor(root), options, problems);
  const services = { index, styles, problems, outlines, budget: new Budget(), mmPerPx: size.mmPerPx };
  const painter = new Painter(services, size);
  if (size.toMm) painter.paint(root);
  const { width, height, sizeStated, ownSize } = size;
  const toMm = size.toMm ?? IDENTITY;
  const { shapes, hidden } = painter;
  return { document, width, height, sizeStated, ownSize, toMm, shapes, hidden, problems: problems.list };
}

/** A drawing in which nothing was read. */
export function emptyDrawing(document: MarkupDocument): Drawing {
  const ownSize = { width: 0, height: 0, physical: false, byStyle: false };
  const size = { width: 0, height: 0, sizeStated: false, ownSize, toMm: IDENTITY };
  return { document, ...size, shapes: [], hidden: [], problems: [] };
}
