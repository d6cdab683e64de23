/** `var(--name, fallback)`: custom properties put into values (CSS Custom Properties 1). */
import { checkpoint } from '../../base/checkpoint';

/** Longer results are given up, so that variables that double each other stay bounded. */
const MAX_LENGTH = 20_000;
const MAX_DEPTH = 32;

export type Lookup = (name: string) => string | undefined;

/** The value with its variables replaced; undefined where one is missing without a fallback (invalid when computed). */
export function substituteVariables(text: string, lookup: Lookup, depth = 0): string | undefined {
  const at = text.search(/var\(/i);
  if (at < 0) return text;
  if (depth > MAX_DEPTH || text.length > MAX_LENGTH) return undefined;
  const end = closingBracket(text, at + 4);
  if (end < 0) return undefined;
  const inside = text.slice(at + 4, end);
  const comma = inside.indexOf(',');
  const name = (comma < 0 ? inside : inside.slice(0, comma)).trim();
  const fallback = comma < 0 ? undefined : inside.slice(comma + 1).trim();
  const value = lookup(name) ?? (fallback === undefined ? undefined : substituteVariables(fallback, lookup, depth + 1));
  if (value === undefined) return undefined;
  return substituteVariables(text.slice(0, at) + value + text.slice(end + 1), lookup, depth + 1);
}

function closingBracket(text: string, from: number): number {
  let depth = 1;
  checkpoint(text.length / 4);
  for (let index = from; index < text.length; index += 1) {
    if (text[index] === '(') depth += 1;
    else if (text[index] === ')') depth -= 1;
    if (depth === 0) return index;
  }
  return -1;
}

/**
 * The custom properties of an element: its own over its parent's. One that refers to itself, at whatever remove, is
 * invalid and counts as not stated.
 */
export function resolveVariables(
  own: ReadonlyMap<string, string>,
  inherited: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  const result = new Map(inherited);
  const open = new Set<string>();
  const done = new Set<string>();
  const resolve: Lookup = (name) => {
    const text = own.get(name);
    if (text === undefined || done.has(name)) return result.get(name);
    if (open.has(name) || open.size > MAX_DEPTH) return undefined;
    open.add(name);
    const value = substituteVariables(text, resolve);
    open.delete(name);
    done.add(name);
    if (value === undefined) result.delete(name);
    else result.set(name, value);
    return value;
  };
  for (const name of own.keys()) resolve(name);
  return result;
}
