/** Keeps the direction of imports: each part may use those below it, and the engine stays free of its hosts. */
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const SRC = path.resolve(__dirname, '../src');

/** What each part may import besides itself. Parts that are not listed here are not allowed to exist. */
const BASE = ['text', 'markup', 'geometry', 'config', 'drawing', 'sheet'];
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  text: [],
  geometry: [],
  // Of geometry it takes the checkpoints of long loops alone.
  markup: ['text', 'geometry'],
  config: ['text'],
  drawing: ['text', 'markup', 'geometry'],
  sheet: ['text', 'markup', 'geometry', 'config', 'drawing'],
  stack: BASE,
  edits: BASE,
  checks: [...BASE, 'stack'],
  report: [...BASE, 'stack', 'checks'],
  picture: [...BASE, 'stack', 'checks', 'report'],
  engine: [...BASE, 'stack', 'edits', 'checks', 'report', 'picture'],
};
const ENGINE_PARTS = Object.keys(MAY_IMPORT);
const HOSTS = ['protocol', 'server', 'cli', 'extension', 'preview', 'build'];

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

/** The part that a relative import leads to; undefined for packages. */
function targetPart({ file, target }: Import): string | undefined {
  if (!target.startsWith('.')) return undefined;
  return partOf(path.relative(SRC, path.resolve(SRC, path.dirname(file), target)));
}

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => /\.ts$/.test(file));
const imports = files.flatMap(importsOf);

describe('imports', () => {
  it('are read at all', () => expect(imports.length).toBeGreaterThan(100));

  it('go downward only', () => {
    const upward = imports.filter((each) => {
      const to = targetPart(each);
      const allowed = MAY_IMPORT[each.part];
      return allowed && to !== undefined && to !== each.part && !allowed.includes(to);
    });
    expect(upward).toEqual([]);
  });

  it('leave every part in a known place', () => {
    expect([...new Set(files.map(partOf))].filter((part) => ![...ENGINE_PARTS, ...HOSTS].includes(part))).toEqual([]);
  });

  it('of vscode stand in src/extension only', () => {
    expect(imports.filter(({ part, target }) => target === 'vscode' && part !== 'extension')).toEqual([]);
  });

  it('of Node built-ins stay out of the engine', () => {
    const builtin = ({ target }: Import) =>
      target.startsWith('node:') || builtinModules.includes(target.split('/')[0]!);
    expect(imports.filter((each) => ENGINE_PARTS.includes(each.part) && builtin(each))).toEqual([]);
  });
});
