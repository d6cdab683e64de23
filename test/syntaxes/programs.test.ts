/** SVG within programs: in templates tagged or marked as such, and in Python strings after a comment. */
import { beforeAll, describe, expect, it, it as test } from 'vitest';
import type { IGrammar } from 'vscode-textmate';
import { loadGrammar, type Token, tokenize } from './tokenize';

const grammars = new Map<string, IGrammar>();
beforeAll(async () => {
  for (const scope of ['source.js', 'source.ts', 'source.python']) grammars.set(scope, await loadGrammar(scope));
});

const tokensOf = (language: string, text: string): Token[] => tokenize(grammars.get(language)!, text).flat();
const having = (language: string, scope: string, text: string): string[] =>
  tokensOf(language, text)
    .filter(({ scopes }) => scopes.some((one) => one.split(' ').some((part) => part.startsWith(scope))))
    .map((token) => token.text);

const COMMAND = 'keyword.operator.path-command';
const NUMBER = 'constant.numeric.path-data';
const WRONG = 'invalid.illegal.path-data';

describe.each(['source.js', 'source.ts'])('templates in %s', (language) => {
  test.each(['svg`', '/* svg */ `'])('that begin with %s have tags and path data', (begin) => {
    const text = `const post = ${begin}<path d="M10 2.5 h20z"/>\`;\nconst n = 5;`;
    expect(having(language, COMMAND, text)).toEqual(['M', 'h', 'z']);
    expect(having(language, NUMBER, text)).toEqual(['10', '2.5', '20']);
    expect(having(language, 'entity.name.tag', text)).toContain('path');
    expect(having(language, 'storage.type', text)).toEqual(['const', 'const']);
  });

  test('keep their values apart: in path data, in other attributes and between tags', () => {
    const value = (code: string) => `\${${code}}`;
    const path = `<path d="M${value('x')} 10 l${value('2 * k')},5"/>`;
    const text = `const a = svg\`<g id="${value('id')}">${path}${value('rays.map((r) => r.x)')}</g>\`; let b;`;
    expect(having(language, WRONG, text)).toEqual([]);
    expect(having(language, COMMAND, text)).toEqual(['M', 'l']);
    expect(having(language, NUMBER, text)).toEqual(['10', '5']);
    expect(having(language, 'punctuation.definition.template-expression', text)).toHaveLength(8);
    expect(having(language, 'storage.type', text)).toContain('let');
  });

  test('of other tags, and strings, are left alone', () => {
    const text = 'const a = html`<path d="M1 2"/>`; const b = `<path d="M1 2"/>`; const c = "<path d=\'M1 2\'/>";';
    expect(having(language, COMMAND, text)).toEqual([]);
  });
});

describe('Python strings', () => {
  it('after a comment have tags and path data, with values of f-strings apart', () => {
    const text = '# svg\npost = f"""<g>\n  <path d="M{x} 10 h{2 * k}z"/>\n</g>"""\nn = len(post)';
    expect(having('source.python', COMMAND, text)).toEqual(['M', 'h', 'z']);
    expect(having('source.python', NUMBER, text)).toEqual(['10']);
    expect(having('source.python', WRONG, text)).toEqual([]);
    expect(having('source.python', 'support.function.builtin', text)).toEqual(['len']);
  });

  it('without it are left alone', () => {
    expect(having('source.python', COMMAND, 'post = """<path d="M1 2"/>"""\n# an svg\nq = 5')).toEqual([]);
  });
});
