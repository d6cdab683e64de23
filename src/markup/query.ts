/** Ways to look into a tree of markup. None recurses, so that no depth of nesting is too deep. */
import { checkpoint } from '../base/checkpoint';
import type { Attribute, ElementNode, MarkupDocument, MarkupNode } from './tree';

export { SVG_NAMESPACE, XHTML_NAMESPACE, XLINK_NAMESPACE, XML_NAMESPACE, XMLNS_NAMESPACE } from './namespaces';

/**
 * The attribute of that name as written; without a prefix it is in no namespace (Namespaces in XML 1.0, 6.2). With a
 * namespace, the one of that local name in it, whatever its prefix.
 */
export function attributeOf(element: ElementNode, name: string, namespace?: string): Attribute | undefined {
  for (const each of element.attributes) {
    if (namespace === undefined ? each.name === name : each.localName === name && each.namespace === namespace) {
      return each;
    }
  }
  return undefined;
}

/** What stands before the local name: `svg:` or nothing. */
export function prefixOf({ name, localName }: ElementNode): string {
  return name.slice(0, name.length - localName.length);
}

export function childElements(element: ElementNode): ElementNode[] {
  return element.children.filter(isElement);
}

export function isElement(node: MarkupNode): node is ElementNode {
  return node.kind === 'element';
}

/** The element itself and all elements inside it, in the order of the text. */
export function* elementsWithin(element: ElementNode): Generator<ElementNode> {
  const waiting: ElementNode[] = [element];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    checkpoint(2);
    yield next;
    for (let index = next.children.length - 1; index >= 0; index -= 1) {
      const child = next.children[index]!;
      if (isElement(child)) waiting.push(child);
    }
  }
}

/** All elements of the document in the order of the text, those beside the root included. */
export function* allElements(document: MarkupDocument): Generator<ElementNode> {
  for (const node of document.children) {
    if (isElement(node)) yield* elementsWithin(node);
  }
}

/** The parent, its parent, and so on to the outermost element. */
export function* ancestors(node: MarkupNode): Generator<ElementNode> {
  for (let next = node.parent; next !== undefined; next = next.parent) yield next;
}

/** The text and CDATA of the element and of all elements inside it, in order. */
export function textContent(element: ElementNode): string {
  const parts: string[] = [];
  const waiting: MarkupNode[] = [element];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    checkpoint();
    if (next.kind === 'text' || next.kind === 'cdata') parts.push(next.value);
    if (next.kind !== 'element') continue;
    for (let index = next.children.length - 1; index >= 0; index -= 1) waiting.push(next.children[index]!);
  }
  return parts.join('');
}

/** The innermost node that holds the code unit at `offset`; undefined outside of all nodes. */
export function nodeAt(document: MarkupDocument, offset: number): MarkupNode | undefined {
  let found: MarkupNode | undefined;
  for (let next = childAt(document.children, offset); next !== undefined; ) {
    found = next;
    next = next.kind === 'element' ? childAt(next.children, offset) : undefined;
  }
  return found;
}

function childAt(children: readonly MarkupNode[], offset: number): MarkupNode | undefined {
  let low = 0;
  let high = children.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (children[middle]!.span.to <= offset) low = middle + 1;
    else high = middle;
  }
  const child = children[low];
  return child !== undefined && child.span.from <= offset ? child : undefined;
}
