/** Which declarations count for an element: presentation attributes, style sheets, `style`, in the order of CSS. */
import type { Attribute, ElementNode } from '../../markup/tree';
import { parseDeclarations, type Declaration, type ParsedSelector, type StyleSheet } from './declarations';
import { SelectorMatcher } from './matcher';
import { isPropertyName, type PropertyName } from './properties';
import { lastCompound, specificityOf, withoutAnyNamespace, type Compound, type Specificity } from './selector';
import { isReadable, type ValueReader } from './value-reader';

/** The declaration that won for a property. */
export interface Declared {
  readonly value: string;
  /** The attribute it stands in; undefined for style sheets. */
  readonly source: Attribute | undefined;
}

/** Winning declarations by property name; custom properties are among them. */
export type DeclaredStyle = ReadonlyMap<string, Declared>;

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
export const UNFOLLOWED: ReadonlySet<string> = new Set([
  'translate', 'rotate', 'scale', 'offset-path', 'mask-image', 'zoom', 'backdrop-filter', 'content-visibility',
]);

const NOTHING: DeclaredStyle = new Map();

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

  private addRule(selector: ParsedSelector, declarations: readonly Declaration[]): void {
    const compound = lastCompound(selector.node);
    const matches = compound.whole ? undefined : this.matcher.compile(withoutAnyNamespace(selector.text));
    if (!compound.whole && !matches) {
      this.notes.push(`The selector “${selector.text}” is not followed; name elements by class, id or type instead.`);
      return;
    }
    const specificity = specificityOf(selector.node);
    const rule = { compound, matches, specificity, order: this.ruleCount++, declarations };
    if (compound.id !== undefined) put(this.byId, compound.id, rule);
    else if (compound.classes[0] !== undefined) put(this.byClass, compound.classes[0], rule);
    else if (compound.type !== undefined) put(this.byType, compound.type, rule);
    else this.anywhere.push(rule);
  }

  private cascade(element: ElementNode): DeclaredStyle {
    const declared = new Map<string, Declared>();
    let styleAttribute: Attribute | undefined;
    for (const attribute of element.attributes) {
      if (attribute.namespace !== '') continue;
      if (attribute.name === 'style') styleAttribute = attribute;
      else if (isComputed(attribute.name)) this.declare(declared, attribute.name, attribute.value, attribute);
    }
    const rules = this.ruleCount > 0 ? this.rulesFor(element) : [];
    const own = styleAttribute ? this.declarationsOf(styleAttribute.value) : [];
    for (const important of [false, true]) {
      for (const rule of rules) this.declareAll(declared, rule.declarations, important, undefined);
      this.declareAll(declared, own, important, styleAttribute);
    }
    return declared.size === 0 ? NOTHING : declared;
  }

  private declareAll(
    into: Map<string, Declared>, list: readonly Declaration[], important: boolean, source: Attribute | undefined,
  ): void {
    for (const item of list) {
      if (item.important === important) this.declare(into, item.property, item.value, source);
    }
  }

  private declare(
    into: Map<string, Declared>, property: string, value: string, source: Attribute | undefined,
  ): void {
    if (property === 'marker') {
      for (const name of ['marker-start', 'marker-mid', 'marker-end']) this.declare(into, name, value, source);
    } else if (isComputed(property) ? isReadable(this.reader, property, value) : isKept(property)) {
      into.set(property, { value, source });
    }
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
    const id = attributeValue(element, 'id');
    const classes = attributeValue(element, 'class')?.split(/\s+/) ?? [];
    const candidates = [...this.anywhere, ...(this.byType.get(element.localName) ?? [])];
    if (id !== undefined) candidates.push(...(this.byId.get(id) ?? []));
    for (const name of new Set(classes)) candidates.push(...(this.byClass.get(name) ?? []));
    return candidates
      .filter((rule) => namesMatch(rule.compound, element, id, classes) && (rule.matches?.(element) ?? true))
      .sort((a, b) => a.specificity - b.specificity || a.order - b.order);
  }
}

/** Properties that presentation attributes may state, too. */
function isComputed(property: string): property is PropertyName | 'transform' {
  return property === 'transform' || isPropertyName(property);
}

function isKept(property: string): boolean {
  return property.startsWith('--') || GEOMETRY.has(property) || UNFOLLOWED.has(property);
}

function put(index: Map<string, IndexedRule[]>, key: string, rule: IndexedRule): void {
  const rules = index.get(key);
  if (rules) rules.push(rule);
  else index.set(key, [rule]);
}

function namesMatch(
  compound: Compound, element: ElementNode, id: string | undefined, classes: readonly string[],
): boolean {
  if (compound.id !== undefined && compound.id !== id) return false;
  if (compound.type !== undefined && compound.type !== element.localName) return false;
  return compound.classes.every((name) => classes.includes(name));
}

function attributeValue(element: ElementNode, name: string): string | undefined {
  return element.attributes.find((attribute) => attribute.name === name)?.value;
}
