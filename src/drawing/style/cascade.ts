/** Which declarations count for an element: presentation attributes, style sheets, `style`, in the order of CSS. */

import { checkpoint } from '../../base/checkpoint';
import { attributeOf } from '../../markup/query';
import type { Attribute, ElementNode } from '../../markup/tree';
import { MARKUP_ROOM, quoted } from '../../text/wording';
import { type Declaration, type ParsedSelector, parseDeclarations, type StyleSheet } from './declarations';
import { SelectorMatcher } from './matcher';
import { isPropertyName, type PropertyName } from './properties';
import { type Compound, lastCompound, type Specificity, specificityOf, withoutAnyNamespace } from './selector';
import { isReadable, type ValueReader } from './value-reader';

/** The declaration that won for a property. */
export interface Declared {
  readonly value: string;
  /** What it stands in: the presentation attribute of its name, the `style` attribute, or a style sheet. */
  readonly origin: 'attribute' | 'style' | 'sheet';
}

/**
 * Winning declarations by property name; custom properties are among them, a `transform` attribute is not. Elements
 * that are alike share one, as drawings hold many: so it knows of no element.
 */
export type DeclaredStyle = ReadonlyMap<string, Declared>;

/** The attribute that a declaration stands in; undefined for style sheets. */
export function sourceAttribute(element: ElementNode, name: string, { origin }: Declared): Attribute | undefined {
  if (origin === 'sheet') return undefined;
  return attributeOf(element, origin === 'style' ? 'style' : name);
}

interface IndexedRule {
  readonly compound: Compound;
  /** Undefined where the compound's names alone decide. */
  readonly matches: ((element: ElementNode) => boolean) | undefined;
  readonly specificity: Specificity;
  readonly order: number;
  readonly declarations: readonly Declaration[];
}

/** Geometry that CSS may state; as attributes these are read where they are needed, not here. */
const GEOMETRY: ReadonlySet<string> = new Set(['x', 'y', 'width', 'height', 'cx', 'cy', 'r', 'rx', 'ry', 'd']);

/** Properties of CSS that move or cut what is drawn and are not followed; to be reported where they are stated. */
export const UNSUPPORTED_PROPERTIES: ReadonlySet<string> = new Set([
  'translate',
  'rotate',
  'scale',
  'offset',
  'offset-path',
  'mask-image',
  'mask-border',
  'mask-border-source',
  'clip',
  'animation',
  'animation-name',
  'zoom',
  'backdrop-filter',
  'content-visibility',
]);

const NONE: ReadonlyMap<string, Declared> = new Map();

/** A place in the tree of what elements may declare: each step is an attribute's name, its value, or a rule. */
interface StyleTrieNode {
  readonly further: Map<string | IndexedRule, StyleTrieNode>;
  declared: DeclaredStyle | undefined;
}

/** Places kept in that tree; beyond this many, elements share no declarations. */
const MAX_KEPT = 20_000;

/** The style sheets of one document and what they give for each element. */
export class Cascade {
  /** What was not honoured, as a sentence each. */
  readonly notes: string[] = [];
  private readonly reader: ValueReader;
  private readonly matcher = new SelectorMatcher();
  private readonly byId = new Map<string, IndexedRule[]>();
  private readonly byClass = new Map<string, IndexedRule[]>();
  private readonly byType = new Map<string, IndexedRule[]>();
  private readonly anywhere: IndexedRule[] = [];
  private readonly styleTexts = new Map<string, readonly Declaration[]>();
  private readonly known = new Map<ElementNode, DeclaredStyle>();
  private readonly unread = new WeakMap<DeclaredStyle, Map<string, Declared>>();
  private readonly trie: StyleTrieNode = { further: new Map(), declared: undefined };
  private trieSize = 0;
  private ruleCount = 0;
  /** Elements are asked for several times in a row. */
  private last: { readonly element: ElementNode; readonly declared: DeclaredStyle } | undefined;

  constructor(sheets: readonly StyleSheet[], reader: ValueReader) {
    this.reader = reader;
    for (const sheet of sheets) {
      this.notes.push(...sheet.notes);
      for (const rule of sheet.rules) {
        for (const selector of rule.selectors) this.addRule(selector, rule.declarations);
      }
    }
  }

  /** Whether selectors were given up because matching them took too many steps. */
  get exhausted(): boolean {
    return this.matcher.exhausted;
  }

  declaredFor(element: ElementNode): DeclaredStyle {
    if (element === this.last?.element) return this.last.declared;
    let declared = this.known.get(element);
    if (!declared) {
      declared = this.cascade(element);
      // What attributes alone say is soon read again; what selectors say is not.
      if (this.ruleCount > 0) this.known.set(element, declared);
    }
    this.last = { element, declared };
    return declared;
  }

  /** The declarations that would count but for their values, which cannot be read, by property. */
  unreadIn(declared: DeclaredStyle): ReadonlyMap<string, Declared> {
    return this.unread.get(declared) ?? NONE;
  }

  private addRule(selector: ParsedSelector, declarations: readonly Declaration[]): void {
    const compound = lastCompound(selector.node);
    const matches = compound.whole ? undefined : this.matcher.compile(withoutAnyNamespace(selector.text));
    if (!compound.whole && !matches) {
      this.notes.push(
        `The selector ${quoted([selector.text], MARKUP_ROOM)[0]} is not followed: only class, id and type are.`,
      );
      return;
    }
    const specificity = specificityOf(selector.node);
    const rule = { compound, matches, specificity, order: this.ruleCount, declarations };
    this.ruleCount += 1;
    if (compound.id !== undefined) addToIndex(this.byId, compound.id, rule);
    else if (compound.classes[0] !== undefined) addToIndex(this.byClass, compound.classes[0], rule);
    else if (compound.type !== undefined) addToIndex(this.byType, compound.type, rule);
    else this.anywhere.push(rule);
  }

  /** The text of the transform that counts: of the declarations, or else of the attribute if it can be read. */
  transformOf(element: ElementNode): string | undefined {
    const declared = this.declaredFor(element).get('transform');
    if (declared) return declared.value;
    const text = attributeOf(element, 'transform')?.value;
    return text !== undefined && isReadable(this.reader, 'transform', text) ? text : undefined;
  }

  private cascade(element: ElementNode): DeclaredStyle {
    checkpoint(4);
    const rules = this.ruleCount > 0 ? this.rulesFor(element) : [];
    let at: StyleTrieNode | undefined = this.trie;
    for (const attribute of element.attributes) {
      const { name, namespace } = attribute;
      if (namespace === '' && isStated(name)) at = this.step(this.step(at, name), attribute.value);
    }
    for (const rule of rules) at = this.step(at, rule);
    if (!at) return this.declarations(element, rules);
    return (at.declared ??= this.declarations(element, rules));
  }

  private step(from: StyleTrieNode | undefined, by: string | IndexedRule): StyleTrieNode | undefined {
    const known = from?.further.get(by);
    if (known || !from || this.trieSize >= MAX_KEPT) return known;
    const next: StyleTrieNode = { further: new Map(), declared: undefined };
    from.further.set(by, next);
    this.trieSize += 1;
    return next;
  }

  private declarations(element: ElementNode, rules: readonly IndexedRule[]): DeclaredStyle {
    const declared = new Map<string, Declared>();
    let style: string | undefined;
    for (const attribute of element.attributes) {
      const { name, namespace } = attribute;
      if (namespace !== '' || !isStated(name)) continue;
      if (name === 'style') style = attribute.value;
      else this.declare(declared, name, attribute.value, 'attribute');
    }
    const own = style === undefined ? [] : this.declarationsOf(style);
    for (const important of [false, true]) {
      for (const rule of rules) this.declareAll(declared, rule.declarations, important, 'sheet');
      this.declareAll(declared, own, important, 'style');
    }
    return declared;
  }

  private declareAll(
    into: Map<string, Declared>,
    list: readonly Declaration[],
    important: boolean,
    origin: Declared['origin'],
  ): void {
    for (const item of list) {
      if (item.important === important) this.declare(into, item.property, item.value, origin);
    }
  }

  private declare(into: Map<string, Declared>, property: string, value: string, origin: Declared['origin']): void {
    if (property === 'marker') {
      for (const name of ['marker-start', 'marker-mid', 'marker-end']) this.declare(into, name, value, origin);
    } else if (isComputed(property) && !isReadable(this.reader, property, value)) {
      this.noteUnread(into, property, { value, origin });
    } else if (isComputed(property) || isKept(property)) {
      into.set(property, { value, origin });
      this.unread.get(into)?.delete(property);
    }
  }

  private noteUnread(into: DeclaredStyle, property: string, declared: Declared): void {
    let unread = this.unread.get(into);
    if (!unread) this.unread.set(into, (unread = new Map()));
    unread.set(property, declared);
  }

  private declarationsOf(text: string): readonly Declaration[] {
    let declarations = this.styleTexts.get(text);
    if (!declarations) {
      declarations = parseDeclarations(text);
      this.styleTexts.set(text, declarations);
    }
    return declarations;
  }

  /** The rules that match, least weight first. */
  private rulesFor(element: ElementNode): readonly IndexedRule[] {
    const id = attributeOf(element, 'id')?.value;
    const classes = attributeOf(element, 'class')?.value?.split(/\s+/) ?? [];
    const candidates = [...this.anywhere, ...(this.byType.get(element.localName) ?? [])];
    if (id !== undefined) candidates.push(...(this.byId.get(id) ?? []));
    for (const name of new Set(classes)) candidates.push(...(this.byClass.get(name) ?? []));
    checkpoint(candidates.length);
    return candidates
      .filter((rule) => namesMatch(rule.compound, element, id, classes) && (rule.matches?.(element) ?? true))
      .sort((a, b) => a.specificity - b.specificity || a.order - b.order);
  }
}

/**
 * Whether an attribute of that name states declarations; transforms differ from element to element, and stand apart.
 */
function isStated(attribute: string): boolean {
  return attribute === 'style' || isPropertyName(attribute);
}

/** Properties that style sheets may state, beside those that are kept as they stand. */
function isComputed(property: string): property is PropertyName | 'transform' {
  return property === 'transform' || isPropertyName(property);
}

function isKept(property: string): boolean {
  return property.startsWith('--') || GEOMETRY.has(property) || UNSUPPORTED_PROPERTIES.has(property);
}

function addToIndex(index: Map<string, IndexedRule[]>, key: string, rule: IndexedRule): void {
  const rules = index.get(key);
  if (rules) rules.push(rule);
  else index.set(key, [rule]);
}

function namesMatch(
  compound: Compound,
  element: ElementNode,
  id: string | undefined,
  classes: readonly string[],
): boolean {
  if (compound.id !== undefined && compound.id !== id) return false;
  if (compound.type !== undefined && compound.type !== element.localName) return false;
  return compound.classes.every((name) => classes.includes(name));
}
