/**
 * Parts that decoders of JSON are made of, and the artist's own materials in `tombolo.json`, read with them. What is
 * wrong is reported at its place; the answer is then undefined.
 */
import type { Node } from 'jsonc-parser';
import { type Material, type MaterialFigures, ownMaterial } from './material';
import { parseDensity, parseLength, parseStiffness } from './values';

export type ReportProblem = (node: Node, message: string, severity?: 'error' | 'warning') => void;
export type Decoder<T> = (node: Node, report: ReportProblem) => T | undefined;

/**
 * Hands each property of an object to its decoder; other keys and other kinds of value are reported.
 * @param what the object, as messages call it
 */
export function decodeFields(
  node: Node,
  what: string,
  report: ReportProblem,
  decoders: Readonly<Record<string, (value: Node) => void>>,
): void {
  const known = Object.keys(decoders)
    .filter((word) => !word.startsWith('$'))
    .join(', ');
  decodeEntries(node, what, report, (key, name, value) => {
    const decode = Object.hasOwn(decoders, name) ? decoders[name] : undefined;
    if (decode) decode(value);
    else report(key, `Unknown key "${name}" in ${what}; it is left out. Known keys: ${known}.`, 'warning');
  });
}

/** Goes through the properties of an object, whatever they are called; what is no object is reported. */
export function decodeEntries(
  node: Node,
  what: string,
  report: ReportProblem,
  visit: (key: Node, name: string, value: Node) => void,
): void {
  if (node.type !== 'object') return report(node, `Here ${what} must be an object: { … }.`);
  const seen = new Set<string>();
  for (const property of node.children ?? []) {
    const [key, value] = property.children ?? [];
    if (!key) continue;
    const name = String(key.value);
    if (seen.has(name)) report(key, `"${name}" is written twice in ${what}; the last one counts.`, 'warning');
    seen.add(name);
    if (value) visit(key, name, value);
  }
}

export function decodeList<T>(decode: Decoder<T>): Decoder<T[]> {
  return (node, report) => {
    if (node.type !== 'array') return void report(node, 'This must be a list: [ … ].');
    return (node.children ?? []).map((child) => decode(child, report)).filter((item) => item !== undefined);
  };
}

export function decodeOneOf<T extends string>(words: readonly T[]): Decoder<T> {
  return (node, report) => {
    const found = words.find((candidate) => candidate === node.value);
    if (!found) report(node, `This must be one of: ${words.map((candidate) => `"${candidate}"`).join(', ')}.`);
    return found;
  };
}

export const decodeWord: Decoder<string> = (node, report) => {
  if (node.type === 'string') return node.value as string;
  return void report(node, 'This must be text in double quotes.');
};

export const decodeBoolean: Decoder<boolean> = (node, report) => {
  if (node.type === 'boolean') return node.value as boolean;
  return void report(node, 'This must be true or false.');
};

export const decodeColour: Decoder<string> = (node, report) => {
  const text = node.type === 'string' ? String(node.value).toLowerCase() : '';
  if (/^#[0-9a-f]{6}$/.test(text)) return text;
  return void report(node, 'A paint is a colour such as "#8fd3ff".');
};

/** Two numbers, in mm. */
export const decodePlace: Decoder<readonly [number, number]> = (node, report) => {
  const [x, y, ...more] = node.type === 'array' ? (node.children ?? []) : [];
  if (x?.type === 'number' && y?.type === 'number' && more.length === 0) return [x.value as number, y.value as number];
  return void report(node, 'A place is two numbers in mm, such as [31.2, 18.7].');
};

export const decodeLength: Decoder<number> = (node, report) => {
  const value = node.type === 'string' ? parseLength(node.value as string) : undefined;
  if (value !== undefined && value >= 0) return value;
  return void report(node, 'This must be a length with its unit in double quotes, such as "0.8mm" or "6in".');
};

export const decodePositiveLength: Decoder<number> = (node, report) => {
  const value = decodeLength(node, report);
  if (value === undefined || value > 0) return value;
  return void report(node, 'This length must be more than nothing.');
};

/** @param what "a speed with its unit in double quotes, such as …" */
export function decodePositive(parse: (text: string) => number | undefined, what: string): Decoder<number> {
  return (node, report) => {
    const value = node.type === 'string' ? parse(node.value as string) : undefined;
    if (value !== undefined && value > 0) return value;
    return void report(node, `This must be ${what}, and more than nothing.`);
  };
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** A material without a readable thickness is left out. */
export function decodeMaterials(node: Node, report: ReportProblem): Record<string, Material> {
  const materials: [string, Material][] = [];
  decodeEntries(node, 'materials', report, (key, name, value) => {
    const material = decodeMaterial(name, value, report);
    if (material) materials.push([name, material]);
    else if (value.type === 'object' && !hasKey(value, 'thickness')) {
      report(key, `The material "${name}" needs "thickness", such as "0.3mm"; it is left out.`);
    }
  });
  return Object.fromEntries(materials);
}

function hasKey({ children = [] }: Node, name: string): boolean {
  return children.some((property) => property.children?.[0]?.value === name);
}

function decodeMaterial(name: string, node: Node, report: ReportProblem): Material | undefined {
  const figures: Mutable<Partial<MaterialFigures>> = {};
  const set = <K extends keyof MaterialFigures>(key: K, value: MaterialFigures[K] | undefined): void => {
    if (value !== undefined) figures[key] = value;
  };
  decodeFields(node, 'a material', report, {
    title: (value) => set('title', decodeWord(value, report)),
    thickness: (value) => set('thickness', decodePositiveLength(value, report)),
    stiffness: (value) => set('stiffness', stiffness(value, report)),
    density: (value) => set('density', density(value, report)),
    bridge: (value) => set('bridge', decodeLength(value, report)),
    opening: (value) => set('opening', decodeLength(value, report)),
    kerf: (value) => set('kerf', decodeLength(value, report)),
    laser: (value) => set('laser', decodeOneOf<Material['laser']>(['usual', 'ask', 'never'])(value, report)),
  });
  const { thickness } = figures;
  return thickness === undefined ? undefined : ownMaterial({ title: name, ...figures, thickness });
}

const stiffness = decodePositive(parseStiffness, 'a stiffness with its unit in double quotes, such as "3000MPa"');
const density = decodePositive(parseDensity, 'a density with its unit in double quotes, such as "800kg/m³"');
