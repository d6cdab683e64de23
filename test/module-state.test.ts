/** Keeps modules without a memory of their own: what is remembered beyond a call stands in the tables of derived facts. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const SRC = path.resolve(__dirname, '../src');

/** State at the top of a module that is meant, and why. */
const ALLOWED: Readonly<Record<string, string>> = {
  'base/checkpoint.ts: watching': 'the watch over the run under way; set back when the run ends',
  'base/checkpoint.ts: stepsLeft': 'counts steps between two looks at that watch',
  'base/checkpoint.ts: stepsBefore': 'counts the steps before: only differences are read',
  'cli/memory.ts: lastCollection': 'when memory was last collected; the process has one heap',
};

const COLLECTIONS = ['Map', 'Set', 'WeakMap', 'WeakSet'];

/** Variables at the top of a module that can be written to, or hold a collection that can. */
function stateOf(file: string, text: string): string[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const lists = source.statements.filter(ts.isVariableStatement).map((statement) => statement.declarationList);
  const written = lists
    .filter((list) => (list.flags & ts.NodeFlags.Const) === 0)
    .flatMap((list) => list.declarations.map((each) => each.name.getText()));
  const collecting = lists
    .flatMap((list) => [...list.declarations])
    .filter((each) => !/^Readonly(Map|Set)\b/.test(each.type?.getText() ?? '') && makesCollection(each.initializer))
    .map((each) => each.name.getText());
  const held = source.statements.filter(ts.isClassDeclaration).flatMap((each) =>
    each.members
      .filter(ts.isPropertyDeclaration)
      .filter((member) => member.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.StaticKeyword))
      .map((member) => `${each.name?.text}.${member.name.getText()}`),
  );
  return [...written, ...collecting, ...held].map((name) => `${file}: ${name}`);
}

/** Whether the expression itself makes one when it is evaluated; what stands in a function is made at a call. */
function makesCollection(node: ts.Node | undefined): boolean {
  if (!node || ts.isFunctionLike(node) || ts.isClassLike(node)) return false;
  if (ts.isNewExpression(node) && COLLECTIONS.includes(node.expression.getText())) return true;
  return ts.forEachChild(node, (child) => makesCollection(child) || undefined) ?? false;
}

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  // The embedded editor of the tests lies below.
  .filter((file) => /\.ts$/.test(file) && !file.includes('node_modules/'));

describe('state at the top of a module', () => {
  it('is found', () => {
    const text = `let a = 1; const b = new Map(); const c: ReadonlySet<string> = new Set(['x']); const d = () => new Set();
      const e = [new WeakMap()]; export class F { static g = 1; readonly h = new Map(); }`;
    expect(stateOf('x.ts', text)).toEqual(['x.ts: a', 'x.ts: b', 'x.ts: e', 'x.ts: F.g']);
  });

  it('is nowhere but where it is meant', () => {
    const state = files.flatMap((file) => stateOf(file, readFileSync(path.join(SRC, file), 'utf8')));
    expect(state.sort()).toEqual(Object.keys(ALLOWED).sort());
  });
});
