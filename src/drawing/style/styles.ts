/** Styles of elements: cascade and inheritance together, for one document. */
import type { ElementNode } from '../../markup/tree';
import type { Span } from '../../text';
import { Cascade, type DeclaredStyle } from './cascade';
import { computeStyle, INITIAL_STYLE, type ComputedStyle } from './computed-style';
import type { StyleSheet } from './declarations';
import { ValueReader } from './value-reader';

/** Ancestors looked through for the place where an inherited value was stated. */
const MAX_ANCESTORS = 64;

export class Styles {
  readonly cascade: Cascade;
  private readonly reader = new ValueReader();
  private readonly inPlace = new Map<ElementNode, ComputedStyle>();

  constructor(sheets: readonly StyleSheet[]) {
    this.cascade = new Cascade(sheets, this.reader);
  }

  declaredFor(element: ElementNode): DeclaredStyle {
    return this.cascade.declaredFor(element);
  }

  /** The style of an element drawn as a child of something styled `parent`. */
  compute(element: ElementNode, parent: ComputedStyle): ComputedStyle {
    return computeStyle(this.declaredFor(element), parent, this.reader);
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
