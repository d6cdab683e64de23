/** Replaces a `use` by a copy of what it draws, so that the copy can be edited and all other instances stay. */
import { resolveTarget, hrefOf, indexDocument } from '../drawing/document-index';
import type { Drawing } from '../drawing/drawing';
import type { Attribute, ElementNode } from '../markup/tree';
import type { TextEdit } from '../text';

/** Attributes that only a `use` understands. */
const OWN = ['href', 'xlink:href', 'x', 'y', 'width', 'height'];

/** The edit that turns the `use` into a group with a copy; a sentence where that would change how it looks. */
export function detachUse(drawing: Drawing, use: ElementNode): TextEdit | string {
  const { text, root } = drawing.document;
  const href = hrefOf(use);
  const target = root && href && resolveTarget(href.value, indexDocument(root));
  if (!target || target.kind !== 'element') return 'What this <use> draws could not be found in the file.';
  const { element } = target;
  if (['x', 'y'].some((name) => !isPlain(attribute(use, name)?.value))) {
    return 'This <use> is placed with units; write its x and y as plain numbers first.';
  }
  if (element.localName === 'symbol' || element.localName === 'svg') {
    return `This <use> draws a <${element.name}>, which brings a viewport of its own; draw its shapes directly first.`;
  }
  const prefix = use.name.slice(0, use.name.length - use.localName.length);
  const kept = use.attributes.filter((attribute) => !OWN.includes(attribute.name) && attribute.name !== 'transform');
  const attributes = kept.map(({ span }) => ` ${text.slice(span.from, span.to)}`).join('');
  const children = use.children.map(({ span }) => text.slice(span.from, span.to)).join('');
  const group = `<${prefix}g${attributes}${transformOf(text, use)}>${children}${copyOf(text, element)}</${prefix}g>`;
  return { span: use.span, text: group };
}

/** A `use` adds its x and y after its own transform (SVG 2, "The use element"). */
function transformOf(text: string, use: ElementNode): string {
  const [x, y] = ['x', 'y'].map((name) => attribute(use, name)?.value.trim() || '0');
  const own = attribute(use, 'transform');
  const move = x === '0' && y === '0' ? '' : `translate(${x}, ${y})`;
  const written = own ? text.slice(own.valueSpan.from, own.valueSpan.to) : '';
  const value = [written, move].filter((part) => part !== '').join(' ');
  return value === '' ? '' : ` transform="${value}"`;
}

function isPlain(value: string | undefined): boolean {
  return value === undefined || value.trim() === '' || Number.isFinite(Number(value));
}

function attribute(element: ElementNode, name: string): Attribute | undefined {
  return element.attributes.find((candidate) => candidate.name === name);
}

/** The element's text without the ids in it: an id may stand only once in a file. */
function copyOf(text: string, element: ElementNode): string {
  let copy = '';
  let done = element.span.from;
  for (const { span } of idsIn(element)) {
    copy += text.slice(done, span.from).replace(/\s+$/, '');
    done = span.to;
  }
  return copy + text.slice(done, element.span.to);
}

function idsIn(element: ElementNode): Attribute[] {
  const own = element.attributes.filter(({ name }) => name === 'id' || name === 'xml:id');
  const inner = element.children.flatMap((child) => (child.kind === 'element' ? idsIn(child) : []));
  return [...own, ...inner];
}
