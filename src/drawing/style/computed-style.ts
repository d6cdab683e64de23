/** The values that count for an element, once inheritance and keywords are worked out. */
import type { TransformFunction } from '../viewport/transform-list';
import { INITIAL_FONT_SIZE, type Length, resolveFontUnits } from '../viewport/units';
import type { Declared, DeclaredStyle } from './cascade';
import {
  type InheritedValues,
  isPropertyName,
  type OwnValues,
  PROPERTIES,
  type PropertyName,
  type PropertyValues,
  parseFontSize,
} from './properties';
import { hasVariables, type ValueReader, wideKeyword } from './value-reader';
import { resolveVariables, substituteVariables } from './variables';

/** Shared between elements where nothing differs: never written to after it is made. */
export interface ComputedStyle {
  readonly inherited: InheritedValues;
  readonly own: OwnValues;
  /** Apart from the other values, as it is what most often differs between elements that are alike otherwise. */
  readonly transform: readonly TransformFunction[];
}

const NO_TRANSFORM: readonly TransformFunction[] = [];

export const INITIAL_STYLE: ComputedStyle = makeInitialStyle();

function makeInitialStyle(): ComputedStyle {
  const inherited: Record<string, unknown> = {
    variables: new Map<string, string>(),
    rootFontSize: INITIAL_FONT_SIZE,
  };
  const own: Record<string, unknown> = {};
  for (const [name, property] of Object.entries(PROPERTIES)) {
    (property.inherited ? inherited : own)[name] = property.initial;
  }
  return {
    inherited: inherited as unknown as InheritedValues,
    own: own as unknown as OwnValues,
    transform: NO_TRANSFORM,
  };
}

/**
 * The style of an element whose declarations are `declared` and that inherits from `parent`, but for its transform:
 * what `transformed` adds. It depends on the parent's own values only where a declaration says `inherit`, or a variable
 * that may.
 */
export function computeStyle(declared: DeclaredStyle, parent: ComputedStyle, reader: ValueReader): ComputedStyle {
  const variables = variablesOf(declared, parent);
  const fontSize = fontSizeOf(declared.get('font-size'), parent, variables);
  const rootFontSize = parent === INITIAL_STYLE ? fontSize : parent.inherited.rootFontSize;
  let inherited: Record<string, unknown> | undefined;
  let own: Record<string, unknown> | undefined;
  for (const [name, { value }] of declared) {
    if (!isPropertyName(name)) continue;
    const read = computeValue(name, value, parentValue(parent, name), variables, reader);
    const computed = inUserUnits(read, fontSize, rootFontSize);
    if (PROPERTIES[name].inherited) (inherited ??= { ...parent.inherited })[name] = computed;
    else (own ??= { ...INITIAL_STYLE.own })[name] = computed;
  }
  if (variables !== parent.inherited.variables) (inherited ??= { ...parent.inherited }).variables = variables;
  if (inherited) Object.assign(inherited, { 'font-size': fontSize, rootFontSize });
  return {
    inherited: (inherited as unknown as InheritedValues | undefined) ?? parent.inherited,
    own: (own as unknown as OwnValues | undefined) ?? INITIAL_STYLE.own,
    transform: NO_TRANSFORM,
  };
}

/** The style with the transform that `text` states. */
export function transformed(
  { inherited, own }: ComputedStyle,
  text: string,
  parent: ComputedStyle,
  reader: ValueReader,
): ComputedStyle {
  const value = withVariables(text, inherited.variables);
  const read = value === undefined ? undefined : reader.readTransform(value);
  const inherits = value !== undefined && wideKeyword(value) === 'inherit';
  return { inherited, own, transform: read ?? (inherits ? parent.transform : NO_TRANSFORM) };
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
  name: Name,
  text: string,
  parent: PropertyValues[Name],
  variables: ReadonlyMap<string, string>,
  reader: ValueReader,
): PropertyValues[Name] {
  const property = PROPERTIES[name];
  const value = withVariables(text, variables);
  const stated = value === undefined ? 'unset' : wideKeyword(value);
  const read = value === undefined || stated ? undefined : reader.read(name, value);
  if (read !== undefined) return read;
  const keyword = stated ?? 'unset';
  if (keyword === 'initial') return property.initial as PropertyValues[Name];
  return keyword === 'inherit' || property.inherited ? parent : (property.initial as PropertyValues[Name]);
}

function fontSizeOf(
  declared: Declared | undefined,
  parent: ComputedStyle,
  variables: ReadonlyMap<string, string>,
): number {
  const inherited = parent.inherited['font-size'];
  const text = declared && withVariables(declared.value, variables);
  if (text === undefined) return inherited;
  if (wideKeyword(text) === 'initial') return PROPERTIES['font-size'].initial;
  return parseFontSize(text, inherited, parent.inherited.rootFontSize) ?? inherited;
}

function inUserUnits(value: unknown, fontSize: number, rootFontSize: number): unknown {
  if (isLength(value)) return resolveFontUnits(value, fontSize, rootFontSize);
  if (!Array.isArray(value) || !value.some(isLength)) return value;
  return value.map((item) => inUserUnits(item, fontSize, rootFontSize));
}

function isLength(value: unknown): value is Length {
  return typeof value === 'object' && value !== null && 'unit' in value && 'value' in value;
}
