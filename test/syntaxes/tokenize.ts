/** Runs the XML grammar with ours injected, as the editor does. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

const require = createRequire(import.meta.url);
const INJECTED = ['path-data', 'accept-comment'];
const FILES = new Map([
  ['text.xml', require.resolve('tm-grammars/grammars/xml.json')],
  ...INJECTED.map((name): [string, string] => {
    const file = new URL(`../../syntaxes/${name}.injection.tmLanguage.json`, import.meta.url);
    return [`tombolo.${name}.injection`, fileURLToPath(file)];
  }),
]);

export interface Token {
  readonly text: string;
  readonly scopes: readonly string[];
}

export async function loadGrammar(): Promise<textmate.IGrammar> {
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
    getInjections: (scope) => (scope === 'text.xml' ? INJECTED.map((name) => `tombolo.${name}.injection`) : undefined),
  });
  return (await registry.loadGrammar('text.xml'))!;
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
