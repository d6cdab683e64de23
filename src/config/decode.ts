/**
 * Parts that decoders of JSON are made of, and the artist's own materials in `tombolo.json`, read with them. What is
 * wrong is reported at its place; the answer is then undefined.
 */
import type { Node } from 'jsonc-parser';
import { nearestWord } from '../text/nearest-word';
import { quoted, type Wording } from '../text/wording';
import { type Material, type MaterialFigures, ownMaterial } from './material';
import { parseDensity, parseLength, parseStiffness } from './values';

export type ReportProblem = (node: Node, told: string | Wording, severity?: 'error' | 'warning') => void;
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
  const known = Object.keys(decoders).filter((word) => !word.startsWith('$'));
  decodeEntries(node, what, report, (key, name, value) => {
    const decode = Object.hasOwn(decoders, name) ? decoders[name] : undefined;
    if (decode) decode(value);
    else report(key, unknownKey(name, what, known), 'warning');
  });
}

function unknownKey(name: string, what: string, known: readonly string[]): Wording {
  return {
    message: `Unknown key ${quoted([name])[0]} (ignored).${guess(name, known)}`,
    detail: `Known keys in ${what}: ${known.join(', ')}.`,
  };
}

/** ` Did you mean "cutter"?`, where a word is near. */
function guess(written: string, words: readonly string[]): string {
  const near = nearestWord(written, words);
  return near === undefined ? '' : ` Did you mean "${near}"?`;
}

/** Goes through the properties of an object, whatever they are called; what is no object is reported. */
export function decodeEntries(
  node: Node,
  what: string,
  report: ReportProblem,
  visit: (key: Node, name: string, value: Node) => void,
): void {
  if (node.type !== 'object') return report(node, `Write ${what} as an object: { … }.`);
  const seen = new Set<string>();
  for (const property of node.children ?? []) {
    const [key, value] = property.children ?? [];
    if (!key) continue;
    const name = String(key.value);
    if (seen.has(name))
      report(key, `${quoted([name])[0]} is written twice in ${what}: the last one counts.`, 'warning');
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

/** @param what it is, as messages call it: "material" */
/* @__NO_SIDE_EFFECTS__ */ export function decodeOneOf<T extends string>(
  words: readonly T[],
  what: string,
): Decoder<T> {
  return (node, report) => {
    const found = words.find((candidate) => candidate === node.value);
    if (!found) report(node, unknownWord(node, words, what));
    return found;
  };
}

function unknownWord({ value }: Node, words: readonly string[], what: string): Wording {
  const written = typeof value === 'string' ? value : undefined;
  return {
    message:
      written === undefined
        ? `The ${what} must be a word in double quotes.`
        : `Unknown ${what} ${quoted([written])[0]}.${guess(written, words)}`,
    detail: `It must be one of: ${words.map((candidate) => `"${candidate}"`).join(', ')}.`,
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
  return void report(node, 'This length must be greater than 0.');
};

/** @param what "a speed with its unit in double quotes, such as …" */
/* @__NO_SIDE_EFFECTS__ */ export function decodePositive(
  parse: (text: string) => number | undefined,
  what: string,
): Decoder<number> {
  return (node, report) => {
    const value = node.type === 'string' ? parse(node.value as string) : undefined;
    if (value !== undefined && value > 0) return value;
    return void report(node, `This must be ${what}, greater than 0.`);
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
      report(key, `The material ${quoted([name])[0]} needs "thickness", such as "0.3mm": it is ignored.`);
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
    laser: (value) => set('laser', decodeOneOf<Material['laser']>(['usual', 'ask', 'never'], 'word')(value, report)),
  });
  const { thickness } = figures;
  return thickness === undefined ? undefined : ownMaterial({ title: name, ...figures, thickness });
}

const stiffness = decodePositive(parseStiffness, 'a stiffness with its unit in double quotes, such as "3000MPa"');
const density = decodePositive(parseDensity, 'a density with its unit in double quotes, such as "800kg/m³"');
