/** Replaces a `use` by a copy of what it draws, so that the copy can be edited and all other instances stay. */
import { hrefOf, indexDocument, resolveTarget } from '../../drawing/document-index';
import type { Drawing } from '../../drawing/types';
import { attributeOf, prefixOf } from '../../markup/query';
import type { Attribute, ElementNode } from '../../markup/tree';
import type { Span, TextEdit } from '../../text/text';

/** Attributes that only a `use` understands. */
const USE_ATTRIBUTES = ['href', 'xlink:href', 'x', 'y', 'width', 'height'];

const IDS = ['id', 'xml:id'];
/** On a `use` these work on the whole instance; on the shape itself they may mean something else. */
const NOT_INHERITED = ['style', 'clip-path', 'mask', 'filter', 'opacity'];

/** The edit that turns the `use` into a group with a copy; a sentence where that would change how it looks. */
export function inlineUse(drawing: Drawing, use: ElementNode): TextEdit | string {
  const { text, root } = drawing.document;
  const href = hrefOf(use);
  const target = root && href && resolveTarget(href.value, indexDocument(root));
  if (target?.kind !== 'element') return 'What this <use> draws could not be found in the file.';
  const { element } = target;
  if (['x', 'y'].some((name) => !isPlain(attributeOf(use, name)?.value))) {
    return 'This <use> is placed with units; write its x and y as plain numbers first.';
  }
  if (element.localName === 'symbol' || element.localName === 'svg') {
    return { span: use.span, text: viewportCopy(text, use, element) };
  }
  const single = mergedCopy(text, use, element);
  return { span: use.span, text: single ?? groupedCopy(text, use, element) };
}

/**
 * A `symbol` is drawn as a nested `svg` of the size that the `use` states (SVG 2, "The use element"). That takes up the
 * attributes of the `use` where it can: groups at the top would be read as layers.
 */
function viewportCopy(text: string, use: ElementNode, element: ElementNode): string {
  const source = ({ span }: Attribute): string => ` ${text.slice(span.from, span.to)}`;
  const prefix = prefixOf(use);
  const sizes = ['width', 'height'].flatMap((name) => attributeOf(use, name) ?? attributeOf(element, name) ?? []);
  const own = element.attributes.filter(({ name }) => ![...IDS, 'width', 'height'].includes(name));
  const kept = keptAttributes(use);
  const places = ['x', 'y'].flatMap((name) => attributeOf(use, name) ?? []);
  const merges =
    !attributeOf(use, 'transform') &&
    ![...kept, ...places].some(({ name }) => NOT_INHERITED.includes(name) || own.some((other) => other.name === name));
  const attributes = [...(merges ? [...kept, ...places] : []), ...sizes, ...own].map(source).join('');
  const content = element.endTag
    ? withoutIds(text, { from: element.startTag.to, to: element.endTag.from }, idsIn(element))
    : '';
  const copy = `<${prefix}svg${attributes}>${content}</${prefix}svg>`;
  return merges ? copy : wrapInGroup(text, use, copy);
}

function groupedCopy(text: string, use: ElementNode, element: ElementNode): string {
  return wrapInGroup(text, use, withoutIds(text, element.span, idsIn(element)));
}

/**
 * A group that stands for the `use`, with what stood in it. At the top, where it would be read as a layer, it stands in
 * an `svg` that leaves everything as it is.
 */
function wrapInGroup(text: string, use: ElementNode, copy: string): string {
  const prefix = prefixOf(use);
  const group = groupFor(text, use, copy);
  const isTop = use.parent !== undefined && use.parent.parent === undefined;
  return isTop ? `<${prefix}svg overflow="visible">${group}</${prefix}svg>` : group;
}

function groupFor(text: string, use: ElementNode, copy: string): string {
  const prefix = prefixOf(use);
  const attributes = keptAttributes(use)
    .map(({ span }) => ` ${text.slice(span.from, span.to)}`)
    .join('');
  const children = use.children.map(({ span }) => text.slice(span.from, span.to)).join('');
  const transform = transformText(transformsOf(text, use));
  return `<${prefix}g${attributes}${transform}>${children}${copy}</${prefix}g>`;
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
  return use.attributes.filter(({ name }) => !USE_ATTRIBUTES.includes(name) && name !== 'transform');
}

/** A `use` adds its x and y after its own transform (SVG 2, "The use element"). */
function transformsOf(text: string, use: ElementNode): string[] {
  const [x, y] = ['x', 'y'].map((name) => attributeOf(use, name)?.value.trim() || '0');
  return [...writtenTransform(text, use), ...(x === '0' && y === '0' ? [] : [`translate(${x}, ${y})`])];
}

function writtenTransform(text: string, element: ElementNode): string[] {
  const own = attributeOf(element, 'transform');
  return own && own.value.trim() !== '' ? [text.slice(own.valueSpan.from, own.valueSpan.to)] : [];
}

function transformText(transforms: readonly string[]): string {
  return transforms.length === 0 ? '' : ` transform="${transforms.join(' ')}"`;
}

function isPlain(value: string | undefined): boolean {
  return value === undefined || value.trim() === '' || Number.isFinite(Number(value));
}

/** A stretch of text without the ids in it: an id may stand only once in a file. */
function withoutIds(text: string, { from, to }: Span, ids: readonly Attribute[]): string {
  let copy = '';
  let done = from;
  for (const { span } of ids.filter(({ span: { from: at } }) => at >= from && at < to)) {
    copy += text.slice(done, span.from).replace(/\s+$/, '');
    done = span.to;
  }
  return copy + text.slice(done, to);
}

/** All ids in it. */
export function idsIn(element: ElementNode): Attribute[] {
  const own = element.attributes.filter(({ name }) => IDS.includes(name));
  const inner = element.children.flatMap((child) => (child.kind === 'element' ? idsIn(child) : []));
  return [...own, ...inner];
}
