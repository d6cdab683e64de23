/** Reads `tombolo.json`. Whatever is wrong becomes a problem at its place, and the rest is still used. */
import { createScanner, type Node, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import { MAX_CONFIG_SIZE } from '../text/file-size';
import type { Span } from '../text/text';
import type { Wording } from '../text/wording';
import { decodeBridges } from './bridge-style';
import { type CheckId, type KnownChecks, SEVERITIES, type Severity } from './check-id';
import {
  type Decoder,
  decodeBoolean,
  decodeColour,
  decodeFields,
  decodeLength,
  decodeList,
  decodeMaterials,
  decodeOneOf,
  decodePlace,
  decodePositive,
  decodePositiveLength,
  decodeWord,
  type ReportProblem,
} from './decode';
import { decodeBendingStiffness, decodeDroop, decodeSpray } from './decode-bending';
import { decodePaint } from './decode-paint';
import { decodeSeparate } from './decode-separate';
import { MATERIALS } from './material';
import {
  type BaselineEntry,
  CONFIG_NAME,
  type Config,
  type CuttingTool,
  DEFAULT_CONFIG,
  LAYERINGS,
  type LayerEntry,
  type PartAcceptance,
  type Reading,
} from './types';
import { parseAcceleration, parseJerk, parseSpeed } from './values';

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

function decodeCutter(node: Node, config: Mutable<Config>, report: ReportProblem): void {
  decodeFields(node, 'cutter', report, {
    tool: (value) => {
      config.tool = decodeOneOf<CuttingTool>(['laser', 'knife'], 'tool')(value, report) ?? config.tool;
    },
    bed: (value) => {
      config.bed = decodeBed(value, report);
    },
    kerf: (value) => {
      config.kerf = decodeLength(value, report);
    },
    compensated: (value) => {
      config.compensated = decodeBoolean(value, report) ?? config.compensated;
    },
    speed: (value) => {
      config.speed = speed(value, report);
    },
    acceleration: (value) => {
      config.acceleration = acceleration(value, report);
    },
    corner: (value) => {
      config.corner = speed(value, report);
    },
    jerk: (value) => {
      config.jerk = jerk(value, report);
    },
  });
}

const speed = decodePositive(parseSpeed, 'a speed with its unit in double quotes, such as "20mm/s"');
const acceleration = decodePositive(
  parseAcceleration,
  'an acceleration with its unit in double quotes, such as "500mm/s²"',
);

const jerk = decodePositive(parseJerk, 'a jerk with its unit in double quotes, such as "10000mm/s³"');

function decodeBed(node: Node, report: ReportProblem): readonly [number, number] | undefined {
  if (node.type !== 'array' || node.children?.length !== 2) {
    return void report(node, 'The bed is two lengths, such as ["300mm", "200mm"].');
  }
  const [width, height] = node.children.map((side) => decodePositiveLength(side, report));
  return width !== undefined && height !== undefined ? [width, height] : undefined;
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

function decodeChecks(node: Node, { ids }: KnownChecks, report: ReportProblem): Config['checks'] {
  const checks: Partial<Record<CheckId, Severity | 'off'>> = {};
  const severity = decodeOneOf<Severity | 'off'>([...SEVERITIES, 'off'], 'severity');
  decodeFields(
    node,
    'checks',
    report,
    forEachCheck(ids, (id, value) => {
      const decoded = severity(value, report);
      if (decoded) checks[id] = decoded;
    }),
  );
  return checks;
}

type Acceptances = Pick<Config, 'accept' | 'acceptedIn'>;

function decodeAccept(node: Node, { acceptable }: KnownChecks, report: ReportProblem): Acceptances {
  const accept: Partial<Record<CheckId, string>> = {};
  const acceptedIn: PartAcceptance[] = [];
  decodeFields(
    node,
    'accept',
    report,
    forEachCheck(acceptable, (id, value) => {
      const parts = value.type === 'array' ? (value.children ?? []) : value.type === 'object' ? [value] : [];
      if (parts.length > 0) acceptedIn.push(...parts.flatMap((part) => decodePartAcceptance(id, part, report) ?? []));
      else if (reasonOf(value)) accept[id] = reasonOf(value);
      else report(value, `Say in double quotes why ${id} is accepted: without a reason it is not.`);
    }),
  );
  return { accept, acceptedIn };
}

function decodePartAcceptance(check: CheckId, node: Node, report: ReportProblem): PartAcceptance | undefined {
  const part: { -readonly [K in 'reason' | 'file' | 'layer' | 'id']?: string } = {};
  const word = (key: keyof typeof part) => (value: Node) => {
    const decoded = decodeWord(value, report);
    if (decoded !== undefined) part[key] = decoded.trim();
  };
  const keys = { reason: word('reason'), file: word('file'), layer: word('layer'), id: word('id') };
  decodeFields(node, 'an acceptance', report, keys);
  const { reason, ...where } = part;
  if (!reason) return void report(node, `Say in "reason" why ${check} is accepted: without a reason it is not.`);
  if (Object.keys(where).length === 0) {
    return void report(node, `Say in "file", "layer" or "id" where ${check} is accepted.`);
  }
  return { check, reason, ...where };
}

function reasonOf({ type, value }: Node): string {
  return type === 'string' ? String(value).trim() : '';
}

function forEachCheck(
  ids: readonly CheckId[],
  decode: (id: CheckId, value: Node) => void,
): Record<string, (value: Node) => void> {
  return Object.fromEntries(ids.map((id) => [id, (value: Node) => decode(id, value)]));
}

const baselineEntryDecoder =
  ({ ids }: KnownChecks): Decoder<BaselineEntry> =>
  (node, report) => {
    const entry: { -readonly [K in keyof BaselineEntry]?: BaselineEntry[K] | undefined } = {};
    let wrong = node.type !== 'object';
    const decode = <T>(decoder: Decoder<T>, value: Node): T | undefined => {
      const decoded = decoder(value, report);
      wrong ||= decoded === undefined;
      return decoded;
    };
    decodeFields(node, 'a baseline entry', report, {
      check: (value) => {
        entry.check = decode(decodeOneOf(ids, 'check'), value);
      },
      file: (value) => {
        entry.file = decode(decodeWord, value);
      },
      layer: (value) => {
        entry.layer = decode(decodeWord, value);
      },
      at: (value) => {
        entry.at = decode(decodePlace, value);
      },
    });
    const { check, file, layer, at } = entry;
    if (wrong) return undefined;
    if (!check) return void report(node, 'A baseline entry needs "check": the check whose finding it lets pass.');
    return { check, file, layer, at };
  };
