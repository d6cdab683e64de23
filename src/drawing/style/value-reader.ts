/** Reads property values, each distinct text once. */
import { parseTransformList, type TransformFunction } from '../viewport/transform-list';
import { PROPERTIES, type PropertyName, type PropertyValues, parseFontSize } from './properties';

/** The keywords that every property takes. */
export type WideKeyword = 'inherit' | 'initial' | 'unset';

const WIDE: Readonly<Record<string, WideKeyword>> = {
  inherit: 'inherit',
  initial: 'initial',
  unset: 'unset',
  revert: 'unset',
  'revert-layer': 'unset',
};

export function wideKeyword(text: string): WideKeyword | undefined {
  const word = text.trim().toLowerCase();
  return Object.hasOwn(WIDE, word) ? WIDE[word] : undefined;
}

/** Whether a value refers to custom properties: it can only be read when those are known. */
export function hasVariables(text: string): boolean {
  return /var\(/i.test(text);
}

/** Distinct texts kept for each property; beyond this many, texts are read anew each time. */
const MAX_KEPT = 10_000;

export class ValueReader {
  private readonly known = new Map<PropertyName, Map<string, unknown>>();
  private lastTransform: { text: string; functions: readonly TransformFunction[] | undefined } | undefined;

  /** The value; undefined where the text is none. */
  read<Name extends PropertyName>(name: Name, text: string): PropertyValues[Name] | undefined {
    let values = this.known.get(name);
    if (!values) this.known.set(name, (values = new Map()));
    if (values.has(text)) return values.get(text) as PropertyValues[Name] | undefined;
    const value = PROPERTIES[name].parse(text);
    if (values.size < MAX_KEPT) values.set(text, value);
    return value;
  }

  /** A transform list; undefined where the text is none. The last one is kept: they differ from element to element. */
  readTransform(text: string): readonly TransformFunction[] | undefined {
    if (this.lastTransform?.text !== text) {
      this.lastTransform = { text, functions: parseTransformList(text).functions };
    }
    return this.lastTransform.functions;
  }
}

/** Whether a declaration counts at all (CSS Cascade, "Cascaded values": invalid ones are dropped before). */
export function isReadable(reader: ValueReader, name: PropertyName | 'transform', text: string): boolean {
  if ((name === 'transform' ? reader.readTransform(text) : reader.read(name, text)) !== undefined) return true;
  if (wideKeyword(text) || hasVariables(text)) return true;
  if (name === 'font-size') return parseFontSize(text, 16) !== undefined;
  return name === 'color' && text.trim().toLowerCase() === 'currentcolor';
}
