/** Reads `tombolo.json`. Whatever is wrong becomes a problem at its place, and the rest is still used. */
import { parseTree, printParseErrorCode, type Node, type ParseError } from 'jsonc-parser';
import type { Span } from '../text';
import { CHECK_IDS, SEVERITIES, type CheckId, type Severity } from './check-id';
import { DEFAULT_CONFIG, type Config, type LayerEntry, type Tool } from './config';
import { parseLength } from './length';
import { MATERIALS } from './material';
import type { Reading } from './sheet';

export interface ConfigProblem {
  readonly message: string;
  readonly span: Span;
  readonly severity: 'error' | 'warning';
}

export interface ConfigReading {
  readonly config: Config;
  readonly problems: readonly ConfigProblem[];
}

type Report = (node: Node, message: string, severity?: 'error' | 'warning') => void;
type Decoder<T> = (node: Node, report: Report) => T | undefined;
type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** @param text the JSON text; comments and trailing commas are allowed */
export function readConfig(text: string): ConfigReading {
  const problems: ConfigProblem[] = [];
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { allowTrailingComma: true });
  for (const error of errors) {
    const span = { from: error.offset, to: error.offset + Math.max(error.length, 0) };
    problems.push({ message: `This is not JSON: ${wordsOf(error)}.`, span, severity: 'error' });
  }
  const report: Report = (node, message, severity = 'error') => {
    problems.push({ message, span: { from: node.offset, to: node.offset + node.length }, severity });
  };
  return { config: root ? decodeConfig(root, report) : DEFAULT_CONFIG, problems };
}

function wordsOf(error: ParseError): string {
  return printParseErrorCode(error.error).replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
}

function decodeConfig(root: Node, report: Report): Config {
  const config: Mutable<Config> = { ...DEFAULT_CONFIG };
  fields(root, 'tombolo.json', report, {
    $schema: () => undefined,
    size: (node) => fields(node, 'size', report, {
      width: (value) => { config.width = positiveLength(value, report); },
      height: (value) => { config.height = positiveLength(value, report); },
    }),
    margin: (node) => { config.margin = length(node, report) ?? config.margin; },
    reading: (node) => { config.reading = oneOf<Reading>(['openings', 'sheet', 'outlines'])(node, report); },
    material: (node) => { config.material = oneOf(Object.keys(MATERIALS))(node, report) ?? config.material; },
    cutter: (node) => decodeCutter(node, config, report),
    limits: (node) => { config.limits = decodeLimits(node, report); },
    layers: (node) => { config.layers = list(decodeLayer)(node, report) ?? []; },
    checks: (node) => { config.checks = decodeChecks(node, report); },
  });
  return config;
}

function decodeCutter(node: Node, config: Mutable<Config>, report: Report): void {
  fields(node, 'cutter', report, {
    tool: (value) => { config.tool = oneOf<Tool>(['laser', 'knife'])(value, report) ?? config.tool; },
    bed: (value) => { config.bed = decodeBed(value, report); },
    kerf: (value) => { config.kerf = length(value, report) ?? config.kerf; },
    compensated: (value) => { config.compensated = truth(value, report) ?? config.compensated; },
  });
}

function decodeBed(node: Node, report: Report): readonly [number, number] | undefined {
  if (node.type !== 'array' || node.children?.length !== 2) {
    return void report(node, 'The bed is two lengths, such as ["300mm", "200mm"].');
  }
  const [width, height] = node.children.map((side) => positiveLength(side, report));
  return width !== undefined && height !== undefined ? [width, height] : undefined;
}

function decodeLimits(node: Node, report: Report): Config['limits'] {
  const limits: Mutable<Config['limits']> = {};
  const set = (key: keyof Config['limits']) => (value: Node) => {
    const decoded = length(value, report);
    if (decoded !== undefined) limits[key] = decoded;
  };
  fields(node, 'limits', report, { bridge: set('bridge'), opening: set('opening'), slip: set('slip') });
  return limits;
}

/** Stands for a `from` that was reported already; no file has this name. */
const UNREADABLE = '\0';

const decodeLayer: Decoder<LayerEntry> = (node, report) => {
  const entry: Mutable<Partial<LayerEntry>> = {};
  fields(node, 'a layer', report, {
    from: (value) => { entry.from = word(value, report) ?? UNREADABLE; },
    name: (value) => { entry.name = word(value, report); },
    paint: (value) => { entry.paint = colour(value, report); },
  });
  if (entry.from === UNREADABLE) return undefined;
  if (entry.from === undefined) {
    if (node.type === 'object') report(node, 'A layer needs "from": the file, or file#id, that it is cut from.');
    return undefined;
  }
  return { from: entry.from, name: entry.name, paint: entry.paint };
};

function decodeChecks(node: Node, report: Report): Config['checks'] {
  const checks: Partial<Record<CheckId, Severity | 'off'>> = {};
  const severity = oneOf<Severity | 'off'>([...SEVERITIES, 'off']);
  const decoders = Object.fromEntries(CHECK_IDS.map((id) => [id, (value: Node) => {
    const decoded = severity(value, report);
    if (decoded) checks[id] = decoded;
  }]));
  fields(node, 'checks', report, decoders);
  return checks;
}

/** Hands each property of an object to its decoder; other keys and other kinds of value are reported. */
function fields(node: Node, what: string, report: Report, decoders: Record<string, (value: Node) => void>): void {
  if (node.type !== 'object') return report(node, `Here ${what} must be an object: { … }.`);
  const seen = new Set<string>();
  for (const property of node.children ?? []) {
    const [key, value] = property.children ?? [];
    if (!key) continue;
    const name = String(key.value);
    if (seen.has(name)) report(key, `"${name}" is written twice in ${what}; the last one counts.`, 'warning');
    seen.add(name);
    const decode = Object.hasOwn(decoders, name) ? decoders[name] : undefined;
    if (!decode) {
      const known = Object.keys(decoders).filter((word) => !word.startsWith('$')).join(', ');
      report(key, `Unknown key "${name}" in ${what}; it is left out. Known keys: ${known}.`, 'warning');
    } else if (value) decode(value);
  }
}

function list<T>(decode: Decoder<T>): Decoder<T[]> {
  return (node, report) => {
    if (node.type !== 'array') return void report(node, 'This must be a list: [ … ].');
    return (node.children ?? []).map((child) => decode(child, report)).filter((item) => item !== undefined);
  };
}

function oneOf<T extends string>(words: readonly T[]): Decoder<T> {
  return (node, report) => {
    const found = words.find((candidate) => candidate === node.value);
    if (!found) report(node, `This must be one of: ${words.map((candidate) => `"${candidate}"`).join(', ')}.`);
    return found;
  };
}

const word: Decoder<string> = (node, report) => {
  if (node.type === 'string') return node.value as string;
  return void report(node, 'This must be text in double quotes.');
};

const truth: Decoder<boolean> = (node, report) => {
  if (node.type === 'boolean') return node.value as boolean;
  return void report(node, 'This must be true or false.');
};

const colour: Decoder<string> = (node, report) => {
  const text = node.type === 'string' ? String(node.value).toLowerCase() : '';
  if (/^#[0-9a-f]{6}$/.test(text)) return text;
  return void report(node, 'A paint is a colour such as "#8fd3ff".');
};

const length: Decoder<number> = (node, report) => {
  const value = node.type === 'string' ? parseLength(node.value as string) : undefined;
  if (value !== undefined && value >= 0) return value;
  return void report(node, 'This must be a length with its unit in double quotes, such as "0.8mm" or "6in".');
};

const positiveLength: Decoder<number> = (node, report) => {
  const value = length(node, report);
  if (value === undefined || value > 0) return value;
  return void report(node, 'This length must be more than nothing.');
};
