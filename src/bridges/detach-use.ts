/** Replaces a `use` by a copy of what it draws, so that the copy can be edited and all other instances stay. */
import { resolveTarget, hrefOf, indexDocument } from '../drawing/document-index';
import type { Drawing } from '../drawing/drawing';
import type { Attribute, ElementNode } from '../markup/tree';
import type { TextEdit } from '../text';

/** Attributes that only a `use` understands. */
const OWN = ['href', 'xlink:href', 'x', 'y', 'width', 'height'];

const IDS = ['id', 'xml:id'];
/** On a `use` these work on the whole instance; on the shape itself they may mean something else. */
const NOT_INHERITED = ['style', 'clip-path', 'mask', 'filter', 'opacity'];

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
  const single = mergedCopy(text, use, element);
  return { span: use.span, text: single ?? groupedCopy(text, use, element) };
}

function groupedCopy(text: string, use: ElementNode, element: ElementNode): string {
  const prefix = use.name.slice(0, use.name.length - use.localName.length);
  const attributes = keptAttributes(use).map(({ span }) => ` ${text.slice(span.from, span.to)}`).join('');
  const children = use.children.map(({ span }) => text.slice(span.from, span.to)).join('');
  const transform = transformText(transformsOf(text, use));
  return `<${prefix}g${attributes}${transform}>${children}${copyOf(text, element)}</${prefix}g>`;
}

const SHAPES = ['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon'];

/** A single shape takes up the attributes of its `use`, so that no group is added; not where both say one thing. */
function mergedCopy(text: string, use: ElementNode, element: ElementNode): string | undefined {
  const kept = keptAttributes(use);
  const own = element.attributes.filter(({ name }) => !IDS.includes(name) && name !== 'transform');
  const both = kept.some(({ name }) => NOT_INHERITED.includes(name) || own.some((other) => other.name === name));
  const filled = use.children.some(({ kind }) => kind === 'element');
  if (!SHAPES.includes(element.localName) || both || filled) return undefined;
  const attributes = [...kept, ...own].map(({ span }) => ` ${text.slice(span.from, span.to)}`).join('');
  const moves = [...transformsOf(text, use), ...writtenTransform(text, element)];
  const rest = element.selfClosing ? '/>' : `>${text.slice(element.startTag.to, element.span.to)}`;
  return `<${element.name}${attributes}${transformText(moves)}${rest}`;
}

function keptAttributes(use: ElementNode): Attribute[] {
  return use.attributes.filter(({ name }) => !OWN.includes(name) && name !== 'transform');
}

/** A `use` adds its x and y after its own transform (SVG 2, "The use element"). */
function transformsOf(text: string, use: ElementNode): string[] {
  const [x, y] = ['x', 'y'].map((name) => attribute(use, name)?.value.trim() || '0');
  return [...writtenTransform(text, use), ...(x === '0' && y === '0' ? [] : [`translate(${x}, ${y})`])];
}

function writtenTransform(text: string, element: ElementNode): string[] {
  const own = attribute(element, 'transform');
  return own && own.value.trim() !== '' ? [text.slice(own.valueSpan.from, own.valueSpan.to)] : [];
}

function transformText(transforms: readonly string[]): string {
  return transforms.length === 0 ? '' : ` transform="${transforms.join(' ')}"`;
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
  const own = element.attributes.filter(({ name }) => IDS.includes(name));
  const inner = element.children.flatMap((child) => (child.kind === 'element' ? idsIn(child) : []));
  return [...own, ...inner];
}
