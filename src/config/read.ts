/** Reads `tombolo.json`. Whatever is wrong becomes a problem at its place, and the rest is still used. */
import { createScanner, type Node, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import { MAX_CONFIG_SIZE } from '../text/file-size';
import type { Span } from '../text/text';
import type { Wording } from '../text/wording';
import { decodeBridges } from './bridge-style';
import type { KnownChecks } from './check-id';
import {
  type Decoder,
  decodeColour,
  decodeFields,
  decodeLength,
  decodeList,
  decodeMaterials,
  decodeOneOf,
  decodePositiveLength,
  decodeWord,
  type ReportProblem,
} from './decode';
import { decodeBendingStiffness, decodeDroop, decodeSpray } from './decode-bending';
import { baselineEntryDecoder, decodeAccept, decodeChecks } from './decode-checks';
import { decodeCutter } from './decode-cutter';
import { decodePaint } from './decode-paint';
import { decodeSeparate } from './decode-separate';
import { MATERIALS } from './material';
import { CONFIG_NAME, type Config, DEFAULT_CONFIG, LAYERINGS, type LayerEntry, type Reading } from './types';

export interface ConfigProblem extends Wording {
  readonly span: Span;
  readonly severity: 'error' | 'warning';
}

export interface ConfigReading {
  readonly config: Config;
  readonly problems: readonly ConfigProblem[];
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/**
 * @param text the JSON text; comments and trailing commas are allowed
 * @param known the checks that it may name
 */
export function parseConfig(text: string, known: KnownChecks): ConfigReading {
  const excess = excessOf(text);
  if (excess) return { config: DEFAULT_CONFIG, problems: [excess] };
  const problems: ConfigProblem[] = [];
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { allowTrailingComma: true });
  for (const error of errors) {
    const span = { from: error.offset, to: error.offset + Math.max(error.length, 0) };
    const message = `Not valid JSON: ${wordsOf(error)}.`;
    problems.push({
      message,
      detail: 'What cannot be read is taken as if it were not there.',
      span,
      severity: 'error',
    });
  }
  const report: ReportProblem = (node, told, severity = 'error') => {
    const wording = typeof told === 'string' ? { message: told } : told;
    problems.push({ ...wording, span: { from: node.offset, to: node.offset + node.length }, severity });
  };
  const config = root ? decodeConfig(root, known, report) : DEFAULT_CONFIG;
  return { config, problems: problems.sort((a, b) => a.span.from - b.span.from) };
}

/** Lists and objects within each other; all that has a meaning takes five. The parser calls itself for each. */
const MAX_DEPTH = 100;

const NOTHING_READ = 'Nothing of this file is read: everything has its usual value.';

/** What keeps the text from being read at all. */
function excessOf(text: string): ConfigProblem | undefined {
  if (text.length > MAX_CONFIG_SIZE) {
    const message = `This file is longer than ${MAX_CONFIG_SIZE / 1e6} million characters: none of it is read.`;
    return { message, detail: NOTHING_READ, span: { from: 0, to: 1 }, severity: 'error' };
  }
  const at = tooDeepAt(text);
  if (at === undefined) return undefined;
  const message = `More than ${MAX_DEPTH} lists and objects within each other: nothing of this file is read.`;
  return { message, detail: NOTHING_READ, span: { from: at, to: at + 1 }, severity: 'error' };
}

function tooDeepAt(text: string): number | undefined {
  const scanner = createScanner(text, true);
  let depth = 0;
  for (scanner.scan(); scanner.getTokenLength() > 0; scanner.scan()) {
    const first = text[scanner.getTokenOffset()];
    if (first === '{' || first === '[') depth += 1;
    else if (first === '}' || first === ']') depth -= 1;
    if (depth > MAX_DEPTH) return scanner.getTokenOffset();
  }
  return undefined;
}

function wordsOf(error: ParseError): string {
  return printParseErrorCode(error.error)
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
}

function decodeConfig(root: Node, known: KnownChecks, report: ReportProblem): Config {
  const config: Mutable<Config> = { ...DEFAULT_CONFIG };
  let material: Node | undefined;
  decodeFields(root, CONFIG_NAME, report, {
    $schema: () => undefined,
    size: (node) =>
      decodeFields(node, 'size', report, {
        width: (value) => {
          config.width = decodePositiveLength(value, report);
        },
        height: (value) => {
          config.height = decodePositiveLength(value, report);
        },
      }),
    margin: (node) => {
      config.margin = decodeLength(node, report) ?? config.margin;
    },
    reading: (node) => {
      config.reading = decodeOneOf<Reading>(['openings', 'sheet', 'outlines'], 'reading')(node, report);
    },
    material: (node) => {
      material = node;
    },
    materials: (node) => {
      config.materials = decodeMaterials(node, report);
    },
    cutter: (node) => decodeCutter(node, config, report),
    bendingStiffness: (node) => {
      config.bendingStiffness = decodeBendingStiffness(node, report);
    },
    droop: (node) => {
      config.droop = decodeDroop(node, report);
    },
    spray: (node) => {
      config.spray = decodeSpray(node, report) ?? {};
    },
    paint: (node) => {
      config.paint = decodePaint(node, report) ?? config.paint;
    },
    limits: (node) => {
      config.limits = decodeLimits(node, report);
    },
    bridges: (node) => {
      config.bridges = decodeBridges(node, report) ?? config.bridges;
    },
    ignore: (node) => {
      config.ignore = decodeList(decodeWord)(node, report) ?? [];
    },
    ground: (node) => {
      config.ground = decodeColour(node, report);
    },
    layers: (node) => {
      if (node.type === 'string') config.layering = decodeOneOf(LAYERINGS, 'way of taking layers')(node, report);
      else config.layers = decodeList(decodeLayer)(node, report) ?? [];
    },
    checks: (node) => {
      config.checks = decodeChecks(node, known, report);
    },
    accept: (node) => {
      Object.assign(config, decodeAccept(node, known, report));
    },
    separate: (node) => {
      config.separate = decodeSeparate(node, report);
    },
    baseline: (node) => {
      config.baseline = decodeList(baselineEntryDecoder(known))(node, report) ?? [];
    },
  });
  // Own materials may stand below the line that names one of them.
  const names = [...Object.keys(MATERIALS), ...Object.keys(config.materials)];
  if (material) config.material = decodeOneOf([...new Set(names)], 'material')(material, report) ?? config.material;
  return config;
}

function decodeLimits(node: Node, report: ReportProblem): Config['limits'] {
  const limits: Mutable<Config['limits']> = {};
  const set = (key: keyof Config['limits']) => (value: Node) => {
    const decoded = decodeLength(value, report);
    if (decoded !== undefined) limits[key] = decoded;
  };
  decodeFields(node, 'limits', report, { bridge: set('bridge'), opening: set('opening'), slip: set('slip') });
  return limits;
}

/** Stands for a `from` that was reported already; no file has this name. */
const UNREADABLE = '\0';

const decodeLayer: Decoder<LayerEntry> = (node, report) => {
  const entry: Mutable<Partial<LayerEntry>> = {};
  decodeFields(node, 'a layer', report, {
    from: (value) => {
      entry.from = decodeWord(value, report) ?? UNREADABLE;
    },
    name: (value) => {
      entry.name = decodeWord(value, report);
    },
    paint: (value) => {
      entry.paint = decodeColour(value, report);
    },
    with: (value) => {
      entry.with = decodeWord(value, report);
    },
  });
  if (entry.from === UNREADABLE) return undefined;
  if (entry.from === undefined) {
    if (node.type === 'object') report(node, 'A layer needs "from": the file, or file#id, it is cut from.');
    return undefined;
  }
  const { from, name, paint, with: partner } = entry;
  return { from, name, paint, ...(partner !== undefined && { with: partner }) };
};
