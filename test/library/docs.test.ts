/** Everything that the library exports says what it is, in which units, and shows how it is used. */
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import * as library from '../../src/library/index';

const root = path.resolve(__dirname, '../..');
const entry = path.join(root, 'src/library/index.ts');
const { config } = ts.readConfigFile(path.join(root, 'src/tsconfig.json'), ts.sys.readFile);
const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, path.join(root, 'src'));
const program = ts.createProgram([entry, ...fileNames.filter((name) => name.endsWith('.d.ts'))], options);
const checker = program.getTypeChecker();

const module = checker.getSymbolAtLocation(program.getSourceFile(entry)!)!;
const exported = checker.getExportsOfModule(module).map((symbol) => {
  const named = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const tags = named.getJsDocTags(checker);
  const tagged = (name: string) =>
    tags.filter((tag) => tag.name === name).map(({ text }) => ts.displayPartsToString(text));
  const summary = ts.displayPartsToString(named.getDocumentationComment(checker));
  return {
    name: symbol.name,
    named,
    summary,
    examples: tagged('example'),
    all: `${summary} ${tags.map(({ text }) => ts.displayPartsToString(text)).join(' ')}`,
  };
});

/** What a number is counted or measured in, or that there is none. */
const UNITS =
  /\bmm\b|true size|\bmm²|\bMPa\b|\bbytes?\b|\bseconds\b|\bminutes\b|UTF-16|how many|\bcount|\bnumbers?\b|0 to 1|of this form|[Nn]othing is measured|own units/i;

const NUMERIC = /\bnumber\b|\bLength\b/;

function membersOf({ declarations = [] }: ts.Symbol): (ts.PropertySignature | ts.MethodSignature)[] {
  const members = declarations.flatMap((each) => (ts.isInterfaceDeclaration(each) ? [...each.members] : []));
  return members.filter((member) => ts.isPropertySignature(member) || ts.isMethodSignature(member));
}

describe('what the library exports', () => {
  it('is all that a program gets', () => {
    const values = exported.filter(({ named }) => named.flags & ts.SymbolFlags.Value).map(({ name }) => name);
    expect(values.sort()).toEqual(Object.keys(library).sort());
    expect(exported.length).toBeGreaterThan(60);
  });

  it.each(exported)('$name says what it is, with an example', ({ summary, examples }) => {
    expect(summary).toMatch(/^[A-Z`{].{20,}/s);
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) expect(example).toMatch(/^```[jt]s\n[\s\S]+\n```$/);
  });

  it.each(exported)('$name says in which units its numbers are', ({ named, all }) => {
    const numbers = membersOf(named).filter((member) => NUMERIC.test(member.type?.getText() ?? ''));
    const unsaid = numbers.filter((member) => !UNITS.test(`${all} ${member.getFullText()}`));
    expect(unsaid.map((member) => member.getText())).toEqual([]);
    // Of functions and values: what goes in and what comes out is of the sheet.
    if (named.flags & (ts.SymbolFlags.Function | ts.SymbolFlags.Variable)) expect(all).toMatch(UNITS);
  });

  it.each(exported)('the example of $name is a program', ({ examples }) => {
    for (const example of examples) {
      const code = example.replace(/^```[jt]s\n|```$/g, '');
      const { diagnostics = [] } = ts.transpileModule(code, { reportDiagnostics: true, fileName: 'example.ts' });
      expect(diagnostics.map(({ messageText }) => messageText)).toEqual([]);
    }
  });

  it.each(exported.filter(({ named }) => named.flags & ts.SymbolFlags.Interface))(
    'each property of $name says what it is',
    ({ named }) => {
      const own =
        named.declarations?.flatMap((each) => (ts.isInterfaceDeclaration(each) ? [...each.members] : [])) ?? [];
      const silent = own.filter((member) => ts.getJSDocCommentsAndTags(member).length === 0);
      expect(silent.map((member) => member.name?.getText())).toEqual([]);
    },
  );
});
