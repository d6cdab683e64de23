/** One pass over the tree: where ids, style sheets and references are. */
import { checkpoint } from '../base/checkpoint';
import { attributeOf, XLINK_NAMESPACE } from '../markup/query';
import type { Attribute, ElementNode, TextNode } from '../markup/tree';

export interface DocumentIndex {
  /** The first element with each id, in document order. */
  readonly ids: ReadonlyMap<string, ElementNode>;
  /** `style` elements of SVG, in document order. */
  readonly styleElements: readonly ElementNode[];
  readonly scriptElements: readonly ElementNode[];
  /** What moves or changes the drawing in time. */
  readonly animations: readonly ElementNode[];
  /** Text in which an entity holds elements: those are not in the tree. */
  readonly entityTexts: readonly TextNode[];
  /** The namespace that SVG elements are in: '' where the root declares none. */
  readonly namespace: string;
}

/** @param root the root `svg` element. */
export function indexDocument(root: ElementNode): DocumentIndex {
  const ids = new Map<string, ElementNode>();
  const styleElements: ElementNode[] = [];
  const scriptElements: ElementNode[] = [];
  const animations: ElementNode[] = [];
  const entityTexts: TextNode[] = [];
  const { namespace } = root;
  const stack = [root];
  for (let element = stack.pop(); element; element = stack.pop()) {
    checkpoint(4);
    const id = attributeOf(element, 'id')?.value;
    if (id !== undefined && id !== '' && !ids.has(id)) ids.set(id, element);
    if (element.localName === 'style' && element.namespace === namespace) styleElements.push(element);
    if (element.localName === 'script' && element.namespace === namespace) scriptElements.push(element);
    if (ANIMATIONS.has(element.localName) && element.namespace === namespace) animations.push(element);
    const graphics = HOLDS_ELEMENTS.has(element.localName);
    for (let index = element.children.length - 1; index >= 0; index -= 1) {
      const child = element.children[index];
      if (child?.kind === 'element') stack.push(child);
      else if (graphics && child?.kind === 'text' && child.value.length > 1 && child.value.includes('<')) {
        entityTexts.push(child);
      }
    }
  }
  const written = entityTexts.filter(isWrittenAsEntity);
  return { ids, styleElements, scriptElements, animations, entityTexts: written, namespace };
}

export const ANIMATIONS: ReadonlySet<string> = new Set([
  'animate',
  'animateMotion',
  'animateTransform',
  'animateColor',
  'set',
  'discard',
]);

const HOLDS_ELEMENTS: ReadonlySet<string> = new Set([
  'svg',
  'g',
  'a',
  'defs',
  'symbol',
  'switch',
  'clipPath',
  'marker',
]);

/** A `<` in text that is no reference to that very character comes out of an entity. */
function isWrittenAsEntity({ value }: TextNode): boolean {
  return /<[a-z_]/i.test(value);
}

/** `href`, or else `xlink:href` (SVG 2, "Deprecated XLink URL reference attributes": `href` beats it). */
export function hrefOf(element: ElementNode): Attribute | undefined {
  return attributeOf(element, 'href') ?? attributeOf(element, 'href', XLINK_NAMESPACE) ?? undeclaredHref(element);
}

/** Files without a declaration of the prefix are common. */
function undeclaredHref(element: ElementNode): Attribute | undefined {
  return element.attributes.find(({ name, namespace }) => name === 'xlink:href' && namespace === '');
}

export type ReferenceTarget =
  | { readonly kind: 'element'; readonly element: ElementNode }
  /** In another document, which is never fetched. */
  | { readonly kind: 'external' }
  | { readonly kind: 'missing' };

/** What a URL such as `#heron` refers to. */
export function resolveTarget(url: string, index: DocumentIndex): ReferenceTarget {
  const trimmed = url.trim();
  if (!trimmed.startsWith('#')) return trimmed === '' ? { kind: 'missing' } : { kind: 'external' };
  const id = trimmed.slice(1);
  const element = index.ids.get(id) ?? index.ids.get(decoded(id));
  return element ? { kind: 'element', element } : { kind: 'missing' };
}

function decoded(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}

/** Whether `inner` is `outer` or lies in it. */
export function containsElement(outer: ElementNode, inner: ElementNode): boolean {
  return outer === inner || (outer.span.from <= inner.span.from && inner.span.to <= outer.span.to);
}
