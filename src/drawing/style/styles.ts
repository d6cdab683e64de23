/** Styles of elements: cascade and inheritance together, for one document. */
import type { ElementNode } from '../../markup/tree';
import type { Span } from '../../text/text';
import { Cascade, type DeclaredStyle, sourceAttribute, UNSUPPORTED_PROPERTIES } from './cascade';
import { type ComputedStyle, computeStyle, INITIAL_STYLE, transformed } from './computed-style';
import type { StyleSheet } from './declarations';
import type { InheritedValues } from './properties';
import { ValueReader } from './value-reader';

/** Ancestors looked through for the place where an inherited value was stated. */
const MAX_ANCESTORS = 64;

/** Different styles under one inheritance that are kept for elements to come. */
const MAX_KEPT = 1000;

/** What is worked out once for declarations that many elements share. */
interface StyleTraits {
  /** Whether values may be taken over from the parent's own, so that the parent's inherited ones do not say all. */
  readonly inheriting: boolean;
  readonly unsupported: readonly string[];
}

const NO_VALUES: readonly never[] = [];

/** Values that leave things as they are. */
const INEFFECTIVE = /^(none|normal|auto|initial|unset)$/i;

export class Styles {
  readonly cascade: Cascade;
  private readonly reader = new ValueReader();
  /** Styles by what is inherited and by what is declared: elements are often alike. */
  private readonly known = new WeakMap<InheritedValues, Map<DeclaredStyle, ComputedStyle>>();
  private readonly traits = new WeakMap<DeclaredStyle, StyleTraits>();
  private readonly inPlace = new Map<ElementNode, ComputedStyle>();

  constructor(sheets: readonly StyleSheet[]) {
    this.cascade = new Cascade(sheets, this.reader);
  }

  declaredFor(element: ElementNode): DeclaredStyle {
    return this.cascade.declaredFor(element);
  }

  /** The style of an element drawn as a child of something styled `parent`. */
  compute(element: ElementNode, parent: ComputedStyle): ComputedStyle {
    const style = this.withoutTransform(this.declaredFor(element), parent);
    const transform = this.cascade.transformOf(element);
    return transform === undefined ? style : transformed(style, transform, parent, this.reader);
  }

  private withoutTransform(declared: DeclaredStyle, parent: ComputedStyle): ComputedStyle {
    let alike = this.known.get(parent.inherited);
    if (!alike) this.known.set(parent.inherited, (alike = new Map()));
    const known = alike.get(declared);
    if (known) return known;
    const style = computeStyle(declared, parent, this.reader);
    if (alike.size < MAX_KEPT && !this.traitsOf(declared).inheriting) alike.set(declared, style);
    return style;
  }

  /** The properties it states that would change what is drawn, and are not followed. */
  unsupportedProperties(element: ElementNode): readonly string[] {
    return this.traitsOf(this.declaredFor(element)).unsupported;
  }

  /** The values that it states of properties that are followed, and that cannot be read. */
  unreadValues(element: ElementNode): readonly { property: string; value: string; span: Span }[] {
    const unread = this.cascade.unreadIn(this.declaredFor(element));
    if (unread.size === 0) return NO_VALUES;
    return [...unread].map(([property, declared]) => {
      const span = sourceAttribute(element, property, declared)?.span ?? element.nameSpan;
      return { property, value: declared.value, span };
    });
  }

  private traitsOf(declared: DeclaredStyle): StyleTraits {
    let traits = this.traits.get(declared);
    if (!traits) this.traits.set(declared, (traits = readTraits(declared)));
    return traits;
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
    for (let count = 0; at && count < MAX_ANCESTORS; count += 1) {
      const declared = this.declaredFor(at).get(property);
      if (declared) return sourceAttribute(at, property, declared)?.span ?? at.nameSpan;
      at = at.parent;
    }
    return element.nameSpan;
  }
}

function readTraits(declared: DeclaredStyle): StyleTraits {
  const all = [...declared];
  const inheriting = all.some(([name, { value }]) => name !== 'transform' && /inherit|var\(/i.test(value));
  const stated = all.filter(([name, { value }]) => UNSUPPORTED_PROPERTIES.has(name) && !INEFFECTIVE.test(value));
  return { inheriting, unsupported: stated.map(([name]) => name) };
}
