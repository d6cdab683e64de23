/** Writes a layer twice, one behind the other: two sheets for one colour, each with bridges of its own. */
import { parseMarkup } from '../../markup/parse';
import { childElements, prefixOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { statedName } from '../../sheet/layer/layers';
import { PARTNER_ATTRIBUTE } from '../../sheet/layer/partner';
import { SECOND_SHEET } from '../../sheet/layer/second-sheets';
import type { Sheet } from '../../sheet/types';
import { applyEdits, type TextEdit } from '../../text/text';
import { indentBefore } from '../element/element-text';
import type { EditResult } from '../element/result';
import { copiesOf, escaped, FreeIds, idOf, valueEdit } from './copied-text';
import { elementsAt, type LayerPlace, placeOfLayer } from './layer-place';

/**
 * Edits that change the layer by `first` and put behind it a copy of what it was, changed by `second`, which says that it
 * goes with the layer. In a file that is one layer without a group, two groups are made.
 * @param isOnlyLayer whether the file has no other
 */
export function writeTwoLayers(
  sheet: Sheet,
  first: readonly TextEdit[],
  second: readonly TextEdit[],
  isOnlyLayer: boolean,
): EditResult {
  const place = placeOfLayer(sheet, isOnlyLayer);
  if (typeof place === 'string') return { refusal: place };
  const { text, root } = sheet.drawing.document;
  const elements = childElements(place.parent).slice(place.first, place.last + 1);
  const [from, to] = [elements[0]?.span.from ?? 0, elements.at(-1)?.span.to ?? 0];
  const isInside = ({ span }: TextEdit): boolean => span.from >= from && span.to <= to;
  if (!root || ![...first, ...second].every(isInside)) {
    return { refusal: 'Some of its shapes stand elsewhere in the file, where both sheets draw them.' };
  }
  const free = new FreeIds(root);
  const names = place.isGroup ? namesOf(elements[0] as ElementNode, free) : newNames(free);
  const edited = applyEdits(text, second);
  const copied = copyOf(edited, place, free, names);
  if (copied === undefined) return { refusal: 'The second layer could not be written.' };
  const indent = indentBefore(text, from);
  const prefix = prefixOf(elements[0] as ElementNode);
  const wrap = (inner: string, attributes: string) =>
    `<${prefix}g ${attributes}>${indent}${inner}${indent}</${prefix}g>`;
  if (place.isGroup) return { edits: [...first, ...names.edits, insertion(to, indent + copied)] };
  const copy = wrap(copied, `id="${names.second}" ${PARTNER_ATTRIBUTE}="${names.first}"`);
  const opened = insertion(from, `<${prefix}g id="${names.first}">${indent}`);
  return { edits: [opened, ...first, insertion(to, `${indent}</${prefix}g>${indent}${copy}`)] };
}

function insertion(at: number, text: string): TextEdit {
  return { span: { from: at, to: at }, text };
}

interface Names {
  /** What the second layer calls the first, in markup. */
  readonly first: string;
  /** The id of the second, where it is a new group. */
  readonly second: string;
  /** What gives the first its name, where it has none. */
  readonly edits: readonly TextEdit[];
}

/** A layer goes by its id, else by its name; one that has neither gets an id. */
function namesOf(group: ElementNode, free: FreeIds): Names {
  const called = idOf(group)?.value.trim() || statedName(group);
  if (called) return { first: escaped(called), second: '', edits: [] };
  const first = free.take('first-sheet');
  return { first, second: '', edits: [insertion(group.nameSpan.to, ` id="${first}"`)] };
}

function newNames(free: FreeIds): Names {
  return { first: free.take('first-sheet'), second: free.take('second-sheet'), edits: [] };
}

/** @param edited the document's text with what changes the second layer */
function copyOf(edited: string, place: LayerPlace, free: FreeIds, names: Names): string | undefined {
  const { root } = parseMarkup(edited);
  const parent = root && followPath(root, place.parent);
  if (!parent) return undefined;
  const elements = elementsAt(parent, place, place.parent);
  const [group] = elements;
  if (!group) return undefined;
  if (place.isGroup) return copiesOf(edited, [group], free, renaming(edited, group, names.first))[0];
  const drawn = elements.filter(({ localName }) => !NOT_DRAWN.includes(localName));
  return copiesOf(edited, drawn, free).join(indentBefore(edited, group.span.from));
}

/** Elements that work on the whole file from where they stand. */
const NOT_DRAWN = ['defs', 'style', 'title', 'desc', 'metadata', 'script', 'namedview'];

/** The element at the same place in another state of the document, where only elements below it have changed. */
function followPath(root: ElementNode, element: ElementNode): ElementNode | undefined {
  if (!element.parent) return root;
  const parent = followPath(root, element.parent);
  return parent && childElements(parent)[childElements(element.parent).indexOf(element)];
}

/** The copy's own name, in all the ways in which the layer has one, and which layer it goes with. */
function renaming(text: string, group: ElementNode, first: string): TextEdit[] {
  const labels = group.attributes.filter(({ name, localName }) => name === 'aria-label' || localName === 'label');
  const edits = labels.map((label) =>
    valueEdit(label, text.slice(label.valueSpan.from, label.valueSpan.to) + SECOND_SHEET),
  );
  const title = childElements(group).find(({ localName }) => localName === 'title');
  if (title?.endTag) edits.push(insertion(title.endTag.from, SECOND_SHEET));
  return [...edits, insertion(group.startTag.to - 1, ` ${PARTNER_ATTRIBUTE}="${first}"`)];
}
