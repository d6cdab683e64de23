import { describe, expect, it } from 'vitest';
import { bridgeStyleOf } from '../../src/config/bridge-style';
import { readConfig } from '../../src/engine/check/known-checks';

const styleOf = (text: string, layer: string) => bridgeStyleOf(readConfig(text).config, layer);
const problemsIn = (text: string) => readConfig(text).problems.map(({ message }) => message);

describe('"bridges" in tombolo.json', () => {
  it('is auto where nothing is said', () => {
    expect(styleOf('{}', 'Reeds')).toBe('auto');
    expect(styleOf('{"bridges": {}}', 'Reeds')).toBe('auto');
  });

  it('is one style for all layers', () => {
    expect(styleOf('{"bridges": "upright"}', 'Reeds')).toBe('upright');
  });

  it('is a style for some by name, and another for the others', () => {
    const text = '{"bridges": {"style": "level", "layers": {"Reeds": "hidden", "Sun": "auto"}}}';
    expect(['Reeds', 'Sun', 'Heron'].map((layer) => styleOf(text, layer))).toEqual(['hidden', 'auto', 'level']);
    expect(problemsIn(text)).toEqual([]);
  });

  it('names a style that is near to one it does not know, and keeps the rest', () => {
    const text = '{"bridges": {"style": "uprihgt", "layers": {"Reeds": "level", "Sun": 3}}}';
    expect(problemsIn(text)).toEqual([
      'Unknown style of bridges "uprihgt". Did you mean "upright"?',
      'The style of bridges must be a word in double quotes.',
    ]);
    expect(['Reeds', 'Sun'].map((layer) => styleOf(text, layer))).toEqual(['level', 'auto']);
  });
});
