/** The text of elements: the author's way of setting them out, a declaration more, two made of one. */
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { applyEdits, type Span, type TextEdit } from '../../text/text';
import { idsIn } from './inline-use';

/** The line end and blanks before an element, if it stands on a line of its own. */
export function indentBefore(text: string, from: number): string {
  return /(?:\r?\n)[ \t]*$/.exec(text.slice(0, from))?.[0] ?? '';
}

/** The span with the white space before it, for what is taken out. */
export function withBlankBefore(text: string, { from, to }: Span): Span {
  let start = from;
  while (start > 0 && /\s/.test(text[start - 1] ?? '')) start -= 1;
  return { from: start, to };
}

/**
 * Two elements of one that has a fill and an open line, as a bridge cuts the two in different ways: the same element
 * twice, the second time without its ids; first filled alone, then its line alone.
 */
export function splitElement(text: string, element: ElementNode): TextEdit {
  const { from, to } = element.span;
  const idless = idsIn(element).map(({ span }) => ({ span: withBlankBefore(text, span), text: '' }));
  const [filled, lined] = [
    copyWith(text, element, [withDeclarations(element, 'stroke:none')]),
    copyWith(text, element, [withDeclarations(element, 'fill:none'), ...idless]),
  ];
  return { span: { from, to }, text: `${filled}${indentBefore(text, from)}${lined}` };
}

function copyWith(text: string, { span: { from, to } }: ElementNode, edits: readonly TextEdit[]): string {
  const own = edits.map(({ span, text: replacement }) => ({
    span: { from: span.from - from, to: span.to - from },
    text: replacement,
  }));
  return applyEdits(text.slice(from, to), own);
}

/** One declaration more in the element's `style`, where it outdoes attributes and rules. */
export function withDeclarations(element: ElementNode, declaration: string): TextEdit {
  const style = attributeOf(element, 'style');
  if (!style) {
    const at = element.nameSpan.to;
    return { span: { from: at, to: at }, text: ` style="${declaration}"` };
  }
  const at = style.valueSpan.to;
  return { span: { from: at, to: at }, text: `${/;\s*$|^\s*$/.test(style.value) ? '' : ';'}${declaration}` };
}
