/** Runs the grammars of XML and of programs with ours injected, as the editor does. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

const require = createRequire(import.meta.url);

/** What the manifest says is injected into the grammar of a scope, by scope name. */
const INJECTED: readonly { scopeName: string; path: string; injectTo: readonly string[] }[] = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
).contributes.grammars;
const FILES = new Map([
  ['text.xml', require.resolve('tm-grammars/grammars/xml.json')],
  ['source.js', require.resolve('tm-grammars/grammars/javascript.json')],
  ['source.ts', require.resolve('tm-grammars/grammars/typescript.json')],
  ['source.python', require.resolve('tm-grammars/grammars/python.json')],
  ...INJECTED.map(({ scopeName, path }): [string, string] => [
    scopeName,
    fileURLToPath(new URL(`../../${path}`, import.meta.url)),
  ]),
]);

export interface Token {
  readonly text: string;
  readonly scopes: readonly string[];
}

export async function loadGrammar(root = 'text.xml'): Promise<textmate.IGrammar> {
  await oniguruma.loadWASM(readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm')));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (scope) => {
      const file = FILES.get(scope);
      return file === undefined ? null : textmate.parseRawGrammar(readFileSync(file, 'utf8'), file);
    },
    getInjections: (scope) =>
      INJECTED.filter(({ injectTo }) => injectTo.includes(scope)).map(({ scopeName }) => scopeName),
  });
  return (await registry.loadGrammar(root))!;
}

/** The tokens of each line. */
export function tokenize(grammar: textmate.IGrammar, text: string): Token[][] {
  let stack = textmate.INITIAL;
  return text.split('\n').map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
    stack = ruleStack;
    return tokens.map(({ startIndex, endIndex, scopes }) => ({ text: line.slice(startIndex, endIndex), scopes }));
  });
}
