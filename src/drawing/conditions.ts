/** Conditional processing: which child of a `switch` is drawn, and which elements are not drawn at all. */
import type { ElementNode } from '../markup/tree';
import { attributeOf } from './document-index';

/**
 * SVG 2, "Conditional processing". Extensions are never supported; the reader's language is taken to be English,
 * as a file must give the same sheet on every machine.
 */
export function conditionsHold(element: ElementNode): boolean {
  if (attributeOf(element, 'requiredExtensions')) return false;
  const languages = attributeOf(element, 'systemLanguage');
  return !languages || languages.value.split(',').some((tag) => /^en(-.*)?$/i.test(tag.trim()));
}
