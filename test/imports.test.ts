/**
 * Keeps the direction of imports: each part may use those below it, the engine stays free of its hosts, the hosts come
 * in through known doors, and no two files need each other.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import { describe, expect, it, it as test } from 'vitest';
import { circlesOf } from './circles';

const SRC = path.resolve(__dirname, '../src');

/** What each part may import besides itself. Parts that are not listed here are not allowed to exist. */
const BASE = ['base', 'text', 'markup', 'geometry', 'config', 'drawing', 'sheet'];
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  text: ['base'],
  geometry: ['base'],
  markup: ['base', 'text'],
  config: ['base', 'text'],
  drawing: ['base', 'text', 'markup', 'geometry'],
  sheet: ['base', 'text', 'markup', 'geometry', 'config', 'drawing'],
  stack: BASE,
  edits: BASE,
  separate: ['base', 'text', 'geometry', 'config', 'stack'],
  checks: [...BASE, 'stack'],
  report: [...BASE, 'stack', 'checks'],
  picture: [...BASE, 'stack', 'checks', 'report'],
  cut: [...BASE, 'stack', 'checks', 'report'],
  engine: [...BASE, 'stack', 'edits', 'checks', 'report', 'picture', 'cut'],
  format: [...BASE, 'checks', 'report', 'engine'],
  library: [...BASE, 'stack', 'edits', 'checks', 'report', 'picture', 'cut', 'engine', 'format'],
};
const ENGINE_PARTS = Object.keys(MAY_IMPORT);
const HOSTS = [
  'protocol',
  'worker',
  'server',
  'trace',
  'separator',
  'cli',
  'extension',
  'preview',
  'build',
  'site',
  'web',
];

/** Hosts that another one is made of, beside the protocol. */
const MADE_OF: Readonly<Record<string, readonly string[]>> = {
  cli: ['trace', 'separator'],
  web: ['server', 'worker'],
};

/** The library's face, open to every host. */
const FRONT_DOOR = 'engine/index';

/**
 * The other files of the engine that a host may import, and all of those are imported. Each is one more thing that
 * cannot change without its hosts: rather let the front door answer than add one.
 */
const DOORS: Readonly<Record<string, readonly string[]>> = {
  protocol: [
    'checks/finding',
    'config/bridge-style',
    'config/check-id',
    'config/decode-separate',
    'config/types',
    'geometry/base/curve-types',
    'geometry/base/polygon-types',
    'picture/scene',
    'text/text',
    'text/wording',
  ],
  worker: [
    'base/checkpoint',
    'base/defined',
    'checks/finding',
    'checks/places',
    'config/bridge-style',
    'config/keep-style',
    'config/limits',
    'config/types',
    'drawing/drawn-through',
    'drawing/types',
    'engine/check/effective-config',
    'geometry/base/curve-types',
    'geometry/base/point-inside',
    'geometry/base/polygon-types',
    'geometry/base/ring',
    'geometry/base/tolerances',
    'geometry/base/vector',
    'geometry/boolean/index',
    'geometry/curve/flatten',
    'markup/tree',
    'picture/necks',
    'picture/path-data',
    'picture/picture',
    'picture/place-svg',
    'picture/scene',
    'report/finding-id',
    'report/fix',
    'report/refusal',
    'report/report',
    'sheet/cutting-time',
    'sheet/layer/layer-id',
    'sheet/source-index',
    'sheet/thin-places',
    'sheet/types',
    'stack/index',
    'stack/misregistration',
    'stack/registration-marks',
    'text/plain-text',
    'text/text',
    'text/text-shift',
  ],
  server: [
    'config/check-id',
    'config/read',
    'config/types',
    'config/values',
    'engine/check/known-checks',
    'report/check-address',
    'report/generator',
    'report/refusal',
    'text/file-size',
    'text/hash',
    'text/markdown',
    'text/notice',
    'text/plain-text',
    'text/text',
    'text/text-shift',
    'text/wording',
  ],
  trace: ['report/generator'],
  separator: ['base/checkpoint', 'config/limits', 'config/types', 'report/refusal', 'separate/index', 'text/hash'],
  cli: [
    'base/defined',
    'config/bridge-style',
    'config/decode-separate',
    'config/edit-config',
    'config/material',
    'config/new-config',
    'config/types',
    'config/values',
    'drawing/style/colour',
    'engine/check/effective-config',
    'engine/check/known-checks',
    'format/bridge-plan',
    'format/checked-file',
    'format/format',
    'format/formats',
    'format/json-text',
    'format/plain-text',
    'format/rules',
    'format/snippet/snippet',
    'format/snippet/snippet-text',
    'format/table',
    'format/text',
    'format/tidy',
    'geometry/base/curve-types',
    'picture/picture',
    'picture/scene',
    'picture/scene-svg',
    'report/generator',
    'report/refusal',
    'report/report',
    'separate/index',
    'sheet/cutting-time',
    'stack/stack',
    'text/file-size',
    'text/hash',
    'text/nearest-word',
    'text/plain-text',
  ],
  extension: [
    'config/edit-config',
    'config/keep-acceptance',
    'config/material',
    'config/new-config',
    'config/read',
    'config/types',
    'config/values',
    'cut/own-file',
    'sheet/cutting-time',
    'text/file-size',
    'text/hash',
    'text/notice',
    'text/plain-text',
    'text/text',
  ],
  preview: [
    'config/bridge-style',
    'config/check-id',
    'config/types',
    'config/values',
    'geometry/base/curve-types',
    'geometry/base/matrix',
    'geometry/base/polygon-types',
    'geometry/base/ring',
    'geometry/base/vector',
    'geometry/polygon/simplify',
    'markup/namespaces',
    'picture/lettering',
    'picture/print-scene',
    'picture/scene',
    'picture/scene-svg',
    'picture/sheet-scene',
    'picture/sheets-scene',
    'report/refusal',
    'sheet/cutting-time',
  ],
  build: ['checks/meta', 'config/schema', 'engine/check/known-checks'],
  web: ['report/check-address'],
  site: ['engine/check/known-checks', 'picture/picture', 'picture/scene', 'picture/scene-svg', 'report/refusal'],
};

/** More in one folder are no longer seen at a glance. */
const MOST_IN_A_FOLDER = 20;

interface Import {
  readonly file: string;
  readonly part: string;
  readonly target: string;
}

function importsOf(file: string): Import[] {
  const text = readFileSync(path.join(SRC, file), 'utf8');
  const found = text.matchAll(
    /(?:^|\n)\s*(?:import|export)\b[^'"`;]*?from\s*['"]([^'"]+)['"]|import\s*\(?\s*['"]([^'"]+)['"]/g,
  );
  return [...found].map((match) => ({ file, part: partOf(file), target: (match[1] ?? match[2]) as string }));
}

function partOf(file: string): string {
  return (file.split('/')[0] as string).replace(/\.ts$/, '');
}

/** Where a relative import leads, without its ending; undefined for packages. */
function targetPath({ file, target }: Import): string | undefined {
  return target.startsWith('.') ? path.posix.join(path.posix.dirname(file), target) : undefined;
}

/** The part that a relative import leads to; undefined for packages. */
function targetPart(each: Import): string | undefined {
  const target = targetPath(each);
  return target === undefined ? undefined : partOf(target);
}

/** The source file that a relative import names; undefined for packages and for what is no TypeScript. */
function targetFile(each: Import): string | undefined {
  const target = targetPath(each);
  return [`${target}.ts`, `${target}/index.ts`].find((file) => known.has(file));
}

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll(path.sep, '/'))
  // The editor host, once it is installed, has packages of its own.
  .filter((file) => /\.ts$/.test(file) && !file.includes('node_modules/'));
const known = new Set(files);
const imports = files.flatMap(importsOf);

describe('imports', () => {
  it('are read at all', () => expect(imports.length).toBeGreaterThan(100));

  it('go downward only', () => {
    const upward = imports.filter((each) => {
      const to = targetPart(each);
      const allowed = MAY_IMPORT[each.part];
      // The manifest, in the root, is no part.
      return allowed && to !== undefined && to !== '..' && to !== each.part && !allowed.includes(to);
    });
    expect(upward).toEqual([]);
  });

  it('leave every part in a known place', () => {
    expect([...new Set(files.map(partOf))].filter((part) => ![...ENGINE_PARTS, ...HOSTS].includes(part))).toEqual([]);
  });

  it('lead round in no circle, those of types included', () => {
    const graph = new Map(files.map((file) => [file, new Set<string>()]));
    for (const each of imports) {
      const target = targetFile(each);
      if (target !== undefined) graph.get(each.file)?.add(target);
    }
    expect([...graph.values()].reduce((sum, targets) => sum + targets.size, 0)).toBeGreaterThan(1000);
    expect(circlesOf(graph)).toEqual([]);
  });

  it('of vscode stand in src/extension only', () => {
    expect(imports.filter(({ part, target }) => target === 'vscode' && part !== 'extension')).toEqual([]);
  });

  it('of Node built-ins stay out of the engine', () => {
    const builtin = ({ target }: Import) =>
      target.startsWith('node:') || builtinModules.includes(target.split('/')[0]!);
    expect(imports.filter((each) => ENGINE_PARTS.includes(each.part) && builtin(each))).toEqual([]);
  });

  it('of packages are none in the worker, but for what runs it as a thread of Node.js', () => {
    const packages = imports.filter((each) => each.part === 'worker' && targetPart(each) === undefined);
    expect(packages.map(({ file, target }) => [file, target])).toEqual([
      ['worker/node.ts', 'node:v8'],
      ['worker/node.ts', 'node:worker_threads'],
    ]);
  });

  it.each(HOSTS)('of %s know no other host, and come to the engine through its doors', (host) => {
    const outward = imports.filter(({ part, target }) => part === host && target.startsWith('.'));
    const others = HOSTS.filter((each) => ![host, 'protocol', ...(MADE_OF[host] ?? [])].includes(each));
    expect(outward.filter((each) => others.includes(targetPart(each)!))).toEqual([]);
    const used = outward.filter((each) => ENGINE_PARTS.includes(targetPart(each)!)).map((each) => targetPath(each)!);
    expect([...new Set(used)].filter((door) => door !== FRONT_DOOR).sort()).toEqual([...DOORS[host]!].sort());
  });
});

test('no folder holds more sources than are seen at a glance', () => {
  const counts = new Map<string, number>();
  for (const file of files) counts.set(path.dirname(file), (counts.get(path.dirname(file)) ?? 0) + 1);
  expect([...counts].filter(([, count]) => count > MOST_IN_A_FOLDER)).toEqual([]);
});
