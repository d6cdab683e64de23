/** Another painting order: a layer's element gets another place in the text, or an entry another in `tombolo.json`. */
import { type Node, parseTree } from 'jsonc-parser';
import type { ElementNode, MarkupNode } from '../../markup/tree';
import type { Report } from '../../report/report';
import { artworkKey } from '../../sheet/layer/artwork-key';
import type { Layer, Sheet } from '../../sheet/types';
import { applyEdits, type Span, type TextEdit } from '../../text/text';

/**
 * Gives a layer of a file that stands alone another place in the order. Its comments come with it.
 * @param from index of the layer in the report's sheets
 * @param to the index that it shall have
 * @returns edits that were proven by reading the edited text, or one sentence that says why there are none
 */
export function reorderLayers(report: Report, from: number, to: number): readonly TextEdit[] | string {
  const [sheet, target] = [report.sheets[from], report.sheets[to]];
  if (!sheet || !target || from === to) return 'There is no such place in the order.';
  const [element, other] = [sheet.layer.element, target.layer.element];
  if (!element || !other || element.parent !== other.parent) {
    return (
      'The order is that of the groups in the file, and one of these layers is no group: put its shapes ' +
      'into a <g> first.'
    );
  }
  const block = blockOf(report.text, element);
  const beside = blockOf(report.text, other);
  const at = to > from ? beside.to : beside.from;
  const edits = [
    { span: block, text: '' },
    { span: { from: at, to: at }, text: report.text.slice(block.from, block.to) },
  ];
  const expected = moved(report.sheets, from, to);
  const now = report.session.check(applyEdits(report.text, edits), report.settings, true).sheets;
  const proven = now.length === expected.length && now.every((each, index) => isSame(each, expected[index] as Sheet));
  return proven ? edits : 'In this place the layer would draw something else; move its group in the text.';
}

/**
 * Moves an entry of `layers`. The entries change places, all that stands between them stays.
 * @param text of `tombolo.json`
 */
export function reorderEntries(text: string, from: number, to: number): readonly TextEdit[] | string {
  const root = parseTree(text, [], { allowTrailingComma: true });
  const entries = listOf(root);
  if (from === to || !entries[from] || !entries[to]) return 'tombolo.json has no such place in its layers.';
  const order = moved(entries, from, to);
  return entries.flatMap((entry, index) => {
    const instead = order[index] as Node;
    if (instead === entry) return [];
    const span = { from: entry.offset, to: entry.offset + entry.length };
    return [{ span, text: text.slice(instead.offset, instead.offset + instead.length) }];
  });
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

function moved<T>(items: readonly T[], from: number, to: number): T[] {
  const others = items.filter((_, index) => index !== from);
  return [...others.slice(0, to), ...items.slice(from, from + 1), ...others.slice(to)];
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
