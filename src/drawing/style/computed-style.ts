/** The values that count for an element, once inheritance and keywords are worked out. */
import { resolveFontUnits, type Length } from '../units';
import type { Declared, DeclaredStyle } from './cascade';
import {
  isPropertyName, parseFontSize, PROPERTIES,
  type InheritedValues, type OwnValues, type PropertyName, type PropertyValues,
} from './properties';
import { hasVariables, wideKeyword, type ValueReader } from './value-reader';
import { resolveVariables, substituteVariables } from './variables';

/** Shared between elements where nothing differs: never written to after it is made. */
export interface ComputedStyle {
  readonly inherited: InheritedValues;
  readonly own: OwnValues;
}

export const INITIAL_STYLE: ComputedStyle = makeInitialStyle();

function makeInitialStyle(): ComputedStyle {
  const inherited: Record<string, unknown> = { variables: new Map<string, string>() };
  const own: Record<string, unknown> = {};
  for (const [name, property] of Object.entries(PROPERTIES)) {
    (property.inherited ? inherited : own)[name] = property.initial;
  }
  return { inherited: inherited as unknown as InheritedValues, own: own as unknown as OwnValues };
}

/** The style of an element whose declarations are `declared` and that inherits from `parent`. */
export function computeStyle(declared: DeclaredStyle, parent: ComputedStyle, reader: ValueReader): ComputedStyle {
  if (declared.size === 0) {
    return parent.own === INITIAL_STYLE.own ? parent : { inherited: parent.inherited, own: INITIAL_STYLE.own };
  }
  const variables = variablesOf(declared, parent);
  const fontSize = fontSizeOf(declared.get('font-size'), parent, variables);
  let inherited: Record<string, unknown> | undefined;
  let own: Record<string, unknown> | undefined;
  for (const [name, { value }] of declared) {
    if (!isPropertyName(name)) continue;
    const computed = inUserUnits(computeValue(name, value, parentValue(parent, name), variables, reader), fontSize);
    if (PROPERTIES[name].inherited) (inherited ??= { ...parent.inherited })[name] = computed;
    else (own ??= { ...INITIAL_STYLE.own })[name] = computed;
  }
  if (variables !== parent.inherited.variables) (inherited ??= { ...parent.inherited })['variables'] = variables;
  if (inherited) inherited['font-size'] = fontSize;
  return {
    inherited: (inherited as unknown as InheritedValues | undefined) ?? parent.inherited,
    own: (own as unknown as OwnValues | undefined) ?? INITIAL_STYLE.own,
  };
}

function parentValue<Name extends PropertyName>(parent: ComputedStyle, name: Name): PropertyValues[Name] {
  return ((PROPERTIES[name].inherited ? parent.inherited : parent.own) as unknown as PropertyValues)[name];
}

function variablesOf(declared: DeclaredStyle, parent: ComputedStyle): ReadonlyMap<string, string> {
  let own: Map<string, string> | undefined;
  for (const [name, { value }] of declared) {
    if (name.startsWith('--')) (own ??= new Map()).set(name, value);
  }
  return own ? resolveVariables(own, parent.inherited.variables) : parent.inherited.variables;
}

function withVariables(text: string, variables: ReadonlyMap<string, string>): string | undefined {
  return hasVariables(text) ? substituteVariables(text, (name) => variables.get(name)) : text;
}

function computeValue<Name extends PropertyName>(
  name: Name, text: string, parent: PropertyValues[Name], variables: ReadonlyMap<string, string>, reader: ValueReader,
): PropertyValues[Name] {
  const property = PROPERTIES[name];
  const value = withVariables(text, variables);
  const read = value === undefined ? undefined : reader.read(name, value);
  if (read !== undefined) return read;
  const keyword = value === undefined ? 'unset' : (wideKeyword(value) ?? 'unset');
  if (keyword === 'initial') return property.initial as PropertyValues[Name];
  return keyword === 'inherit' || property.inherited ? parent : (property.initial as PropertyValues[Name]);
}

function fontSizeOf(
  declared: Declared | undefined, parent: ComputedStyle, variables: ReadonlyMap<string, string>,
): number {
  const inherited = parent.inherited['font-size'];
  const text = declared && withVariables(declared.value, variables);
  if (text === undefined) return inherited;
  if (wideKeyword(text) === 'initial') return PROPERTIES['font-size'].initial;
  return parseFontSize(text, inherited) ?? inherited;
}

function inUserUnits(value: unknown, fontSize: number): unknown {
  if (isLength(value)) return resolveFontUnits(value, fontSize);
  return Array.isArray(value) && value.some(isLength) ? value.map((item) => inUserUnits(item, fontSize)) : value;
}

function isLength(value: unknown): value is Length {
  return typeof value === 'object' && value !== null && 'unit' in value && 'value' in value;
}
