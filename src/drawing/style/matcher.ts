/** Selectors beyond plain names, matched by css-select over our tree, with bounded work. */

import { compile, type Options } from 'css-select';
import nthCheck from 'nth-check';
import { checkpoint } from '../../base/checkpoint';
import { attributeOf } from '../../markup/query';
import type { ElementNode, MarkupNode } from '../../markup/tree';

/**
 * Steps from node to node that all selectors of one document may take together. `a ~ b` and descendant combinators
 * are quadratic on hostile trees; at this bound matching takes about a second, and selectors stop matching.
 */
const MAX_STEPS = 30_000_000;

/** Where an element stands among the elements of its parent. */
interface Place {
  readonly index: number;
  readonly count: number;
  readonly indexOfType: number;
  countOfType: number;
  readonly previous: ElementNode | null;
}

/** Compiles selectors for one document. Remembers the places of siblings, so that `:nth-child` and `+` are cheap. */
export class SelectorMatcher {
  private steps = 0;
  private readonly formulas = new Map<string, (index: number) => boolean>();
  private readonly places = new Map<ElementNode, Place>();
  private readonly options: Options<MarkupNode, ElementNode>;

  constructor() {
    this.options = { adapter: this.makeAdapter(), pseudos: this.makePseudos(), xmlMode: true, cacheResults: true };
  }

  /** Whether selectors were given up because matching them took too many steps. */
  get exhausted(): boolean {
    return this.steps > MAX_STEPS;
  }

  /** Undefined where the selector is not one that can be matched (pseudo-elements, unknown pseudo-classes). */
  compile(selector: string): ((element: ElementNode) => boolean) | undefined {
    try {
      return compile<MarkupNode, ElementNode>(selector, this.options);
    } catch {
      return undefined;
    }
  }

  private makeAdapter(): NonNullable<Options<MarkupNode, ElementNode>['adapter']> {
    const isTag = (node: MarkupNode): node is ElementNode => node.kind === 'element';
    const step = <Value>(value: Value, spent: Value, cost = 1): Value => {
      this.steps += cost;
      return this.exhausted ? spent : value;
    };
    return {
      isTag,
      getAttributeValue: (element, name) => attributeOf(element, name)?.value,
      hasAttrib: (element, name) => attributeOf(element, name) !== undefined,
      getChildren: (node) => (isTag(node) ? [...node.children] : []),
      getName: (element) => element.localName,
      getParent: (element) => step(element.parent ?? null, null),
      getSiblings: (node) => {
        const siblings = node.parent?.children ?? [node];
        return step(siblings as MarkupNode[], [], siblings.length);
      },
      prevElementSibling: (node) => (isTag(node) ? step(this.placeOf(node).previous, null) : null),
      getText: (node) => (node.kind === 'text' || node.kind === 'cdata' ? node.value : ''),
      removeSubsets: (nodes) => nodes,
    };
  }

  private makePseudos(): NonNullable<Options<MarkupNode, ElementNode>['pseudos']> {
    const nth =
      (position: (place: Place) => number) =>
      (element: ElementNode, formula?: string | null): boolean =>
        this.formula(formula ?? '')(position(this.placeOf(element)));
    const place =
      (test: (place: Place) => boolean) =>
      (element: ElementNode): boolean =>
        test(this.placeOf(element));
    return {
      'nth-child': nth((at) => at.index),
      'nth-last-child': nth((at) => at.count - 1 - at.index),
      'nth-of-type': nth((at) => at.indexOfType),
      'nth-last-of-type': nth((at) => at.countOfType - 1 - at.indexOfType),
      'first-child': place((at) => at.index === 0),
      'last-child': place((at) => at.index === at.count - 1),
      'only-child': place((at) => at.count === 1),
      'first-of-type': place((at) => at.indexOfType === 0),
      'last-of-type': place((at) => at.indexOfType === at.countOfType - 1),
      'only-of-type': place((at) => at.countOfType === 1),
    };
  }

  private formula(text: string): (index: number) => boolean {
    let check = this.formulas.get(text);
    if (!check) {
      try {
        check = nthCheck(text);
      } catch {
        check = () => false;
      }
      this.formulas.set(text, check);
    }
    return check;
  }

  private placeOf(element: ElementNode): Place {
    const known = this.places.get(element);
    if (known) return known;
    this.placeSiblings(element.parent?.children ?? [element]);
    return this.places.get(element) ?? { index: 0, count: 1, indexOfType: 0, countOfType: 1, previous: null };
  }

  private placeSiblings(nodes: readonly MarkupNode[]): void {
    const elements = nodes.filter((node) => node.kind === 'element');
    const ofType = new Map<string, number>();
    let previous: ElementNode | null = null;
    for (const [index, element] of elements.entries()) {
      checkpoint();
      const indexOfType = ofType.get(element.localName) ?? 0;
      ofType.set(element.localName, indexOfType + 1);
      this.places.set(element, { index, count: elements.length, indexOfType, countOfType: 0, previous });
      previous = element;
    }
    for (const element of elements) {
      const place = this.places.get(element);
      if (place) place.countOfType = ofType.get(element.localName) ?? 1;
    }
  }
}
