/** What style rules give a basic shape by its element's name, so that it keeps it as a path. */
import { indexDocument } from '../../drawing/document-index';
import { Problems } from '../../drawing/problems';
import { readStyleSheets } from '../../drawing/style/read-sheets';
import { Styles } from '../../drawing/style/styles';
import type { ElementNode, MarkupDocument } from '../../markup/tree';

/** Whether a style sheet of the file has the name as a selector, or in one. */
export function isTypeSelected({ root }: MarkupDocument, localName: string): boolean {
  const name = new RegExp(`(?:^|[\\s,>+~}(|/])${localName}(?=[\\s,>+~{.:#[)])`);
  return (
    root !== undefined &&
    indexDocument(root).styleElements.some(({ children }) =>
      children.some((child) => (child.kind === 'text' || child.kind === 'cdata') && name.test(child.value)),
    )
  );
}

/** The declarations that reach the element from style sheets, as its own `style` would have them. */
export function declarationsFor(document: MarkupDocument, element: ElementNode): string {
  if (!document.root) return '';
  const { styleElements } = indexDocument(document.root);
  const sheets = readStyleSheets(document, styleElements, new Problems());
  const rules = [...new Styles(sheets).declaredFor(element)].filter(([, { origin }]) => origin === 'sheet');
  const escaped = (value: string): string => value.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  return rules.map(([name, { value }]) => `${name}:${escaped(value)}`).join(';');
}
