/** Conditional processing: which child of a `switch` is drawn, and which elements are not drawn at all. */
import type { Attribute, ElementNode } from '../markup/tree';

/**
 * SVG 2, "Conditional processing". Extensions are never supported; the reader's language is taken to be English,
 * as a file must give the same sheet on every machine.
 */
export function conditionsHold(element: ElementNode): boolean {
  return unmetCondition(element) === undefined;
}

/** The first attribute that keeps the element from being drawn. */
export function unmetCondition(element: ElementNode): Attribute | undefined {
  for (const attribute of element.attributes) {
    const { name, namespace } = attribute;
    if (namespace !== '') continue;
    if (name === 'requiredExtensions') return attribute;
    if (name === 'systemLanguage' && !attribute.value.split(',').some((tag) => /^en(-.*)?$/i.test(tag.trim())))
      return attribute;
  }
  return undefined;
}
