import { beforeAll, describe, expect, it, test } from 'vitest';
import type { IGrammar } from 'vscode-textmate';
import type { Token } from './tokenize';
import { loadGrammar, tokenize } from './tokenize';

let grammar: IGrammar;
beforeAll(async () => {
  grammar = await loadGrammar();
});

/** The texts of all tokens that have the scope. */
function having(scope: string, text: string): string[] {
  const tokens: Token[] = tokenize(grammar, text).flat();
  return tokens.filter(({ scopes }) => scopes.some((one) => one.startsWith(scope))).map((token) => token.text);
}

const COMMAND = 'keyword.operator.path-command';
const NUMBER = 'constant.numeric.path-data';
const FLAG = 'constant.language.arc-flag';
const WRONG = 'invalid.illegal.path-data';

describe('path data', () => {
  it('tells commands from numbers', () => {
    const text = '<path d="M10-20.5.5 l1e2,3z" fill="#a3"/>';
    expect(having(COMMAND, text)).toEqual(['M', 'l', 'z']);
    expect(having(`${COMMAND}.relative`, text)).toEqual(['l', 'z']);
    expect(having(NUMBER, text)).toEqual(['10', '-20.5', '.5', '1e2', '3']);
    expect(having(WRONG, text)).toEqual([]);
  });

  it.each([
    ['A25,25 -30 0,1 50,-25', ['0', '1'], ['25', '25', '-30', '50', '-25']],
    ['a5.5.3-4 010-.1', ['0', '1'], ['5.5', '.3', '-4', '0', '-.1']],
    ['a1 1 0 0110,20 2 2 0 1 0 7 8', ['0', '1', '1', '0'], ['1', '1', '0', '10', '20', '2', '2', '0', '7', '8']],
    ['a123456 789', [], ['123456', '789']],
  ])('tells the flags of %j from its numbers', (arc, flags, numbers) => {
    const text = `<path d="${arc}z"/>`;
    expect(having(FLAG, text)).toEqual(flags);
    expect(having(NUMBER, text)).toEqual(numbers);
    expect(having(WRONG, text)).toEqual([]);
    expect(having(COMMAND, text).at(-1)).toBe('z');
  });

  it.each([
    ['M0 0 R5', ['R']],
    ['M0 0 #', ['#']],
    ['M0 0 L1e', ['e']],
    ['a1 1 0 6 0 1 1', ['6']],
    ['a1 1 0 -1 0 1 1', ['-']],
    ['a1 1 0 0 7 1 1', ['7']],
  ])('marks what is wrong in %j', (data, wrong) => {
    expect(having(WRONG, `<path d="${data}"/>`)).toEqual(wrong);
  });

  it('goes on over lines, in either kind of quotes, and ends with the value', () => {
    const text = "<path\n  d='M0 0\n    L1 1\n  z'\n  id='M0'/>";
    expect(having(COMMAND, text)).toEqual(['M', 'L', 'z']);
    expect(having(NUMBER, text)).toEqual(['0', '0', '1', '1']);
  });

  it('stops where a tag begins in a value without closing quote', () => {
    expect(having(COMMAND, '<path d="M0 0\n<g id="M0 0"/>')).toEqual(['M']);
    expect(having('entity.name.tag.localname', '<path d="M0 0\n<g id="M0 0"/>')).toContain('path');
  });

  it('leaves other attributes, text and comments alone', () => {
    const text = '<g id="M0 0" data-d="M0 0">d="M0 0"<!-- d="M0 0" --></g>';
    expect(having(COMMAND, text)).toEqual([]);
    expect(having(NUMBER, text)).toEqual([]);
  });

  it('knows references in the data', () => {
    expect(having('constant.character.entity', '<path d="M0&#32;0"/>')).toEqual(['&', '#32', ';']);
    expect(having(WRONG, '<path d="M0&#32;0"/>')).toEqual([]);
  });
});

describe('lists and transforms', () => {
  it('colours their numbers', () => {
    expect(having(NUMBER, '<svg viewBox="0 0 148 105"><polygon points="1,2 3-4"/></svg>')).toEqual([
      '0',
      '0',
      '148',
      '105',
      '1',
      '2',
      '3',
      '-4',
    ]);
    const text = '<g transform="translate(1,2) rotate(45) spin(3)"/>';
    expect(having('support.function.transform', text)).toEqual(['translate', 'rotate']);
    expect(having(NUMBER, text)).toEqual(['1', '2', '45']);
    expect(having(WRONG, text).join('')).toBe('spin(3)');
  });
});

describe('what is ours', () => {
  it('marks its attributes', () => {
    const text = '<svg width="1" data-tombolo-reading="sheet" data-other="1"/>';
    expect(having('support.type.attribute-name.tombolo', text)).toEqual(['data-tombolo-reading']);
    expect(having('string.quoted', text)).toContain('sheet');
  });

  it('marks acceptances in comments, not in text', () => {
    const text =
      '<g><!-- tombolo accept thin-bridge: reeds bend -->tombolo accept x' +
      '<!--\n  tombolo accept loose-tongue --></g>';
    expect(having('keyword.control.accept.tombolo', text)).toEqual(['accept', 'accept']);
    expect(having('entity.name.tag.check.tombolo', text)).toEqual(['thin-bridge', 'loose-tongue']);
  });
});

test('colours a whole file', async () => {
  const lines = tokenize(grammar, HERON).map((tokens) => tokens.map(shownToken).join('\n'));
  await expect(`${lines.join('\n\n')}\n`).toMatchFileSnapshot('heron.tokens.txt');
});

function shownToken({ text, scopes }: Token): string {
  return `${JSON.stringify(text).padEnd(24)} ${scopes.slice(1).join(' ')}`;
}

const HERON = `<svg xmlns="http://www.w3.org/2000/svg" width="148mm" viewBox="0 0 148 105"
  data-tombolo-reading="openings">
  <!-- tombolo accept thin-bridge: the reeds are held by tape -->
  <path fill="#3b4a54"
    d="M10,10 l5.5-3
       a25,25 0 10-25,25 Z"/>
  <polygon points="1,2 3,4 5,6" transform="rotate(45 10 10)"/>
</svg>`;
