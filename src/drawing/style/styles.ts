/** Styles of elements: cascade and inheritance together, for one document. */
import type { ElementNode } from '../../markup/tree';
import type { Span } from '../../text';
import { Cascade, type DeclaredStyle } from './cascade';
import { computeStyle, INITIAL_STYLE, transformed, type ComputedStyle } from './computed-style';
import type { StyleSheet } from './declarations';
import type { InheritedValues } from './properties';
import { ValueReader } from './value-reader';

/** Ancestors looked through for the place where an inherited value was stated. */
const MAX_ANCESTORS = 64;

/** Different styles under one inheritance that are kept for elements to come. */
const MAX_KEPT = 1000;

export class Styles {
  readonly cascade: Cascade;
  private readonly reader = new ValueReader();
  /** Styles by what is inherited and by what is declared: elements are often alike. */
  private readonly known = new WeakMap<InheritedValues, Map<string, ComputedStyle>>();
  private readonly inPlace = new Map<ElementNode, ComputedStyle>();

  constructor(sheets: readonly StyleSheet[]) {
    this.cascade = new Cascade(sheets, this.reader);
  }

  declaredFor(element: ElementNode): DeclaredStyle {
    return this.cascade.declaredFor(element);
  }

  /** The style of an element drawn as a child of something styled `parent`. */
  compute(element: ElementNode, parent: ComputedStyle): ComputedStyle {
    const declared = this.declaredFor(element);
    const style = this.withoutTransform(declared, parent);
    const transform = declared.get('transform');
    return transform ? transformed(style, transform.value, parent, this.reader) : style;
  }

  private withoutTransform(declared: DeclaredStyle, parent: ComputedStyle): ComputedStyle {
    const key = keyOf(declared);
    if (/inherit|var\(/i.test(key)) return computeStyle(declared, parent, this.reader);
    let alike = this.known.get(parent.inherited);
    if (!alike) this.known.set(parent.inherited, (alike = new Map()));
    let style = alike.get(key);
    if (!style) {
      style = computeStyle(declared, parent, this.reader);
      if (alike.size < MAX_KEPT) alike.set(key, style);
    }
    return style;
  }

  /** The style of an element where it stands in the tree, not where a `use` draws it. */
  computeInPlace(element: ElementNode): ComputedStyle {
    const chain: ElementNode[] = [];
    let at: ElementNode | undefined = element;
    while (at && !this.inPlace.has(at)) {
      chain.push(at);
      at = at.parent;
    }
    let style = (at && this.inPlace.get(at)) ?? INITIAL_STYLE;
    for (let item = chain.pop(); item; item = chain.pop()) {
      style = this.compute(item, style);
      this.inPlace.set(item, style);
    }
    return style;
  }

  /** Where a property's value is stated: the attribute, or the name of the element that a style sheet gives it to. */
  sourceOf(element: ElementNode, property: string): Span {
    let at: ElementNode | undefined = element;
    for (let count = 0; at && count < MAX_ANCESTORS; count++) {
      const declared = this.declaredFor(at).get(property);
      if (declared) return declared.source?.span ?? at.nameSpan;
      at = at.parent;
    }
    return element.nameSpan;
  }
}

function keyOf(declared: DeclaredStyle): string {
  let key = '';
  for (const [name, { value }] of declared) {
    if (name !== 'transform') key += `${name}:${value}\0`;
  }
  return key;
}
