import { describe, expect, it } from 'vitest';
import { appliesToScreen, parseDeclarations, parseStyleSheet } from '../../../src/drawing/style/declarations';

describe('parseDeclarations', () => {
  it('names in lower case, custom ones as they are, comments and importance taken off', () => {
    expect(parseDeclarations('FILL: Red /* x */ ! important; --Tide: {a}; stroke:blue')).toEqual([
      { property: 'fill', value: 'Red', important: true },
      { property: '--Tide', value: '{a}', important: false },
      { property: 'stroke', value: 'blue', important: false },
    ]);
  });

  it('what is not well formed is left out, what follows counts', () => {
    expect(parseDeclarations('fill red; :; stroke:blue;; }x{').map(({ property }) => property)).toContain('stroke');
    expect(parseDeclarations('')).toEqual([]);
  });
});

describe('parseStyleSheet', () => {
  it('rules, also in @media screen; others are noted', () => {
    const { rules, notes } = parseStyleSheet(
      'a, b > c{fill:red} @media screen{d{fill:red}} @media print{e{fill:red}} @media (width > 9px){f{}} @import "x";',
    );
    expect(rules.map(({ selectors }) => selectors.map(({ text }) => text))).toEqual([['a', 'b > c'], ['d']]);
    expect(notes.length).toBe(2);
  });

  it('selectors and media are taken as they are written, but for their comments', () => {
    const { rules } = parseStyleSheet(
      '/* x */ a/* y */.b, [title="/* z */"] {fill:red} @media /* only */ screen{:is(c, d):nth-child(2n + 1 of e){fill:red}}',
    );
    expect(rules.map(({ selectors }) => selectors.map(({ text }) => text))).toEqual([
      ['a.b', '[title="/* z */"]'],
      [':is(c, d):nth-child(2n + 1 of e)'],
    ]);
  });

  it('a broken rule does not take the next one with it', () => {
    expect(
      parseStyleSheet('a:{fill:red} b{fill:red} c{').rules.some(({ selectors }) => selectors[0]?.text === 'b'),
    ).toBe(true);
    expect(() => parseStyleSheet('<!-- {{{ @media')).not.toThrow();
  });

  it('media', () => {
    expect(['', 'screen', 'all', 'print, screen', 'only screen'].map(appliesToScreen)).not.toContain(false);
    expect(['print', 'screen and (color)', 'not all'].map(appliesToScreen)).not.toContain(true);
  });
});
