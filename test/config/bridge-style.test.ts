import { describe, expect, it } from 'vitest';
import { bridgeStyleOf } from '../../src/config/bridge-style';
import { styleEdits } from '../../src/config/keep-style';
import { readConfig } from '../../src/engine/check/known-checks';
import { applyEdits } from '../../src/text/text';

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

  it('says whether roots are rounded, and keeps them where a style is kept', () => {
    const rootsOf = (text: string) => readConfig(text).config.bridges.roots;
    expect(rootsOf('{"bridges": {"roots": "rounded"}}')).toBe('rounded');
    expect(rootsOf('{"bridges": {"style": "level"}}')).toBeUndefined();
    expect(rootsOf('{"bridges": "upright"}')).toBeUndefined();
    const wrong = '{"bridges": {"roots": "round", "style": "level"}}';
    expect(problemsIn(wrong)).toEqual(['Unknown form of roots "round". Did you mean "rounded"?']);
    expect([rootsOf(wrong), styleOf(wrong, 'Reeds')]).toEqual([undefined, 'level']);
    const text = '{"bridges": {"roots": "rounded"}}';
    const kept = applyEdits(text, styleEdits(text, readConfig(text).config.bridges, 'Reeds', 'level'));
    expect([rootsOf(kept), styleOf(kept, 'Reeds')]).toEqual(['rounded', 'level']);
  });
});
