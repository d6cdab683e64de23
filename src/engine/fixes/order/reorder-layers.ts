/** Another painting order: a layer's element gets another place in the text, or an entry another in `tombolo.json`. */
import { type Node, parseTree } from 'jsonc-parser';
import { defined } from '../../../base/defined';
import { groupByPaint } from '../../../edits/layer/paint-groups';
import type { ElementNode, MarkupNode } from '../../../markup/tree';
import type { Report } from '../../../report/report';
import { artworkKey } from '../../../sheet/layer/artwork-key';
import { paintOrder } from '../../../sheet/layer/paint-order';
import type { Layer, Sheet } from '../../../sheet/types';
import { applyEdits, type Span, type TextEdit } from '../../../text/text';

/**
 * Puts the layers of a file that stands alone into another order. Their comments come with them.
 * @param order indices of the report's sheets, first sprayed first
 * @param moved those that are taken out and put in elsewhere; the others keep their order
 * @returns edits that were proven by reading the edited text, or one sentence that says why there are none
 */
export function reorderLayers(
  { text, sheets, session, settings }: Report,
  order: readonly number[],
  moved: readonly number[],
): readonly TextEdit[] | string {
  if (moved.length === 0 || !isOrderOf(order, sheets.length)) return 'There is no such place in the order.';
  const report = { text, sheets, session, settings };
  if (sheets.every(({ layer }) => layer.byPaint && !layer.element)) return groupsInOrder(report, order);
  const elements = sheets.map(({ layer }) => layer.element);
  const places = placesOf(order, moved);
  const touched = [...moved, ...places.map(({ beside }) => beside)].map((layer) => elements[layer]);
  if (touched.some((element) => !element || element.parent !== touched[0]?.parent)) return NO_GROUPS;
  if (new Set(elements).size < elements.length) return TAKEN_APART;
  const block = (layer: number): Span => blockOf(text, elements[layer] as ElementNode);
  const edits = [
    ...moved.map((layer) => ({ span: block(layer), text: '' })),
    ...places.map(({ layers, beside, behind }) => {
      const at = behind ? block(beside).to : block(beside).from;
      const blocks = layers.map(block).map(({ from, to }) => text.slice(from, to));
      return { span: { from: at, to: at }, text: blocks.join('') };
    }),
  ];
  return drawsInOrder(report, edits, order)
    ? edits
    : 'In this place the layer would draw something else; move its group in the text.';
}

type Drawn = Pick<Report, 'text' | 'sheets' | 'session' | 'settings'>;

/** Whether the edited text has the very same layers, in that order. */
function drawsInOrder(
  { text, sheets, session, settings }: Drawn,
  edits: readonly TextEdit[],
  order: readonly number[],
) {
  const now = session.check(applyEdits(text, edits), settings, true).sheets;
  const expected = order.map((layer) => defined(sheets[layer]));
  return now.length === expected.length && now.every((each, index) => isSame(each, defined(expected[index])));
}

/** A drawing that is taken apart by paint gets a group for each, where they print what it shows. */
function groupsInOrder(report: Drawn, order: readonly number[]): readonly TextEdit[] | string {
  const layers = order.map((layer) => defined(report.sheets[layer]).layer);
  const { root } = defined(report.sheets[0]).drawing.document;
  const { conflicts, unsorted } = paintOrder(defined(report.sheets[0]).drawing.shapes);
  if (!root || unsorted || conflicts.length > 0) return MIXED;
  const outcome = groupByPaint(report.text, root, layers);
  if ('refusal' in outcome) return outcome.refusal;
  return drawsInOrder(report, outcome.edits, order)
    ? outcome.edits
    : 'In groups by paint the drawing would look otherwise: put each colour into a <g> by hand.';
}

const MIXED = 'A colour lies under and over another in this drawing: put each of its layers into a <g> by hand first.';

const NO_GROUPS =
  'The order is that of the groups in the file, and one of these layers is no group: put its shapes into a <g> first.';

const TAKEN_APART =
  'These layers are colours of one drawing and follow from it: put each colour into a <g> of its own first.';

/** Layers that are put in together. */
interface Insertion {
  readonly layers: readonly number[];
  /** A layer that stays, and on which side of it they go. */
  readonly beside: number;
  readonly behind: boolean;
}

/** Where layers go: those that are sprayed later than before, behind the one that stays before them. */
function placesOf(order: readonly number[], moved: readonly number[]): Insertion[] {
  const places: Insertion[] = [];
  let [layers, before]: [number[], number | undefined] = [[], undefined];
  const close = (next: number | undefined): void => {
    const [first] = layers;
    const later = first !== undefined && order.indexOf(first) > first;
    const beside = later ? (before ?? next) : (next ?? before);
    if (layers.length > 0 && beside !== undefined) places.push({ layers, beside, behind: beside === before });
    [layers, before] = [[], next];
  };
  for (const layer of order) {
    if (moved.includes(layer)) layers.push(layer);
    else close(layer);
  }
  close(undefined);
  return places;
}

/**
 * Puts the entries of `layers` into another order. The entries change places, all that stands between them stays.
 * @param text of `tombolo.json`
 * @param order indices of entries, first sprayed first
 */
export function reorderEntries(text: string, order: readonly number[]): readonly TextEdit[] | string {
  const entries = listOf(parseTree(text, [], { allowTrailingComma: true }));
  if (!isOrderOf(order, entries.length)) return 'tombolo.json has no such place in its layers.';
  return entries.flatMap((entry, index) => {
    const instead = defined(entries[defined(order[index])]);
    if (instead === entry) return [];
    const span = { from: entry.offset, to: entry.offset + entry.length };
    return [{ span, text: text.slice(instead.offset, instead.offset + instead.length) }];
  });
}

/** Whether each of so many items is named once. */
function isOrderOf(order: readonly number[], count: number): boolean {
  return order.length === count && order.toSorted((a, b) => a - b).every((item, index) => item === index);
}

function listOf(root: Node | undefined): readonly Node[] {
  // Of a key that is written twice the last one counts.
  const layers =
    root?.type === 'object'
      ? root.children?.findLast((property) => property.children?.[0]?.value === 'layers')
      : undefined;
  const list = layers?.children?.[1];
  return list?.type === 'array' ? (list.children ?? []) : [];
}

function isSame(a: Sheet, b: Sheet): boolean {
  return (
    a.layer.name === b.layer.name &&
    a.layer.paint === b.layer.paint &&
    a.layer.reading === b.layer.reading &&
    drawsTheSame(a.layer, b.layer)
  );
}

function drawsTheSame({ shapes }: Layer, other: Layer): boolean {
  const [a, b] = [artworkKey(shapes), artworkKey(other.shapes)];
  return a.whole === b.whole && a.colours === b.colours;
}

/**
 * The element with the white space and the comments before it that are its own, and a comment behind it in its line.
 */
function blockOf(text: string, element: ElementNode): Span {
  const siblings = element.parent?.children ?? [];
  const at = siblings.indexOf(element);
  let from = element.span.from;
  for (let index = at - 1; index >= 0; index -= 1) {
    const node = siblings[index] as MarkupNode;
    if (!isSpace(node, text) && !isOwnComment(siblings, index, text)) break;
    // A blank line stays where it is: it sets apart what stands above it.
    const blank = isSpace(node, text) ? blankLines(node, text) : 0;
    from = node.span.from + blank;
    if (blank > 0) break;
  }
  return { from, to: endOf(siblings, at, text) };
}

function endOf(siblings: readonly MarkupNode[], at: number, text: string): number {
  const [space, comment] = siblings.slice(at + 1, at + 3);
  const element = siblings[at] as MarkupNode;
  if (space?.kind === 'comment') return space.span.to;
  const trails = space && comment?.kind === 'comment' && isSpace(space, text) && !textOf(space, text).includes('\n');
  return trails ? comment.span.to : element.span.to;
}

/** Whether the comment stands in a line that does not begin with an element, whose comment it would be. */
function isOwnComment(siblings: readonly MarkupNode[], index: number, text: string): boolean {
  const node = siblings[index] as MarkupNode;
  if (node.kind !== 'comment') return false;
  const before = siblings[index - 1];
  if (!before) return true;
  return isSpace(before, text) && (textOf(before, text).includes('\n') || siblings[index - 2]?.kind !== 'element');
}

const textOf = ({ span }: MarkupNode, text: string): string => text.slice(span.from, span.to);
const isSpace = (node: MarkupNode, text: string): boolean => node.kind === 'text' && !/\S/.test(textOf(node, text));

/** How long the blank lines at the beginning of white space are, without the line break that follows them. */
function blankLines(node: MarkupNode, text: string): number {
  const [blank = ''] = /^\s*(?=\r\n|(?<!\r)\n)/.exec(textOf(node, text)) ?? [];
  return blank.includes('\n') ? blank.length : 0;
}
