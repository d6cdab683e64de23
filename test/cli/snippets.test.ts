import { describe, expect, it } from 'vitest';
import { snippetStyleFor, snippetsFor } from '../../src/cli/snippets';

const terminal = { isTerminal: true, environment: { LANG: 'en_GB.UTF-8', TERM: 'xterm-256color' } };
const file = { ...terminal, isTerminal: false };

describe('snippetsFor', () => {
  it('draws a few places of a file on a terminal, and none elsewhere', () => {
    expect(snippetsFor(undefined, terminal, 80)).toBe(4);
    expect(snippetsFor(undefined, file, 80)).toBe(0);
  });

  it('draws none unasked where they have no room, or nobody looks', () => {
    expect(snippetsFor(undefined, terminal, 40)).toBe(0);
    expect(snippetsFor(undefined, { ...terminal, environment: { CI: 'true' } }, 80)).toBe(0);
    expect(snippetsFor(undefined, { ...terminal, environment: { TERM: 'dumb' } }, 80)).toBe(0);
  });

  it('heeds the option before all else', () => {
    expect(snippetsFor(true, file, 20)).toBeGreaterThan(1000);
    expect(snippetsFor(false, terminal, 200)).toBe(0);
  });
});

describe('snippetStyleFor', () => {
  const style = (environment: Record<string, string>, platform = 'linux') =>
    snippetStyleFor({ isTerminal: true, environment }, platform);

  it('takes braille where the locale is of Unicode', () => {
    expect(style({ LANG: 'en_GB.UTF-8' })).toBe('braille');
    expect(style({ LANG: 'C', LC_ALL: 'de_DE.utf8' })).toBe('braille');
    expect(style({ LANG: 'en_GB.UTF-8', LC_ALL: 'C' })).toBe('plain');
    expect(style({})).toBe('plain');
  });

  it('makes do with ASCII where the font has no braille', () => {
    expect(style({ LANG: 'en_GB.UTF-8', TERM: 'linux' })).toBe('plain');
    expect(style({}, 'win32')).toBe('plain');
    expect(style({ WT_SESSION: '1' }, 'win32')).toBe('braille');
  });

  it('writes braille into files', () => {
    expect(snippetStyleFor({ isTerminal: false, environment: {} }, 'linux')).toBe('braille');
  });
});
