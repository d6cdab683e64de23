/** The style of a layer, written into `tombolo.json`. */
import { describe, expect, it } from 'vitest';
import { bridgeStyleOf } from '../../src/config/bridge-style';
import { styleEdits } from '../../src/config/keep-style';
import { readConfig } from '../../src/engine/index';
import { applyEdits } from '../../src/text/text';

function kept(text: string, layer: string, style: Parameters<typeof styleEdits>[3]): string {
  return applyEdits(text, styleEdits(text, readConfig(text).config.bridges, layer, style));
}

const styleIn = (text: string, layer: string) => bridgeStyleOf(readConfig(text).config, layer);

describe('the style of a layer', () => {
  it('is added, with comments and layout left as they are', () => {
    const text =
      '{\n    // cut from the green card\n    "material": { "thickness": 0.3 }, // mm\n    "width": "140mm"\n}\n';
    const now = kept(text, 'Sun', 'upright');
    expect(styleIn(now, 'Sun')).toBe('upright');
    expect(styleIn(now, 'Heron')).toBe('auto');
    expect(now).toContain(
      '    // cut from the green card\n    "material": { "thickness": 0.3 }, // mm\n    "width": "140mm",',
    );
    expect(now).toContain('\n    "bridges": {\n        "layers": {\n            "Sun": "upright"\n');
  });

  it('keeps tabs and line ends', () => {
    const now = kept('{\r\n\t"width": "140mm"\r\n}\r\n', 'Sun', 'level');
    expect(now).toContain(',\r\n\t"bridges": {\r\n\t\t"layers": {\r\n\t\t\t"Sun": "level"\r\n');
    expect(now.replaceAll('\r\n', '')).not.toContain('\n');
  });

  it('stands beside the style of all layers', () => {
    const now = kept('{ "bridges": "upright" }', 'Sun', 'hidden');
    expect([styleIn(now, 'Sun'), styleIn(now, 'Heron')]).toEqual(['hidden', 'upright']);
  });

  it('takes the place of the one that the layer had, and leaves those of others', () => {
    const text = '{ "bridges": { "layers": { "Sun": "level", /* as drawn */ "Reeds": "hidden" } } }';
    const now = kept(text, 'Sun', 'fewest');
    expect(now).toBe(text.replace('"level"', '"fewest"'));
  });

  it('goes where it is that of all layers again', () => {
    const two = '{\n  "bridges": {\n    "layers": {\n      "Sun": "level",\n      "Reeds": "hidden"\n    }\n  }\n}\n';
    const one = kept(two, 'Sun', 'auto');
    expect(one).not.toContain('Sun');
    expect(styleIn(one, 'Reeds')).toBe('hidden');
    expect(kept(one, 'Reeds', 'auto')).not.toContain('layers');
  });

  it('makes no edit where it says so already', () => {
    expect(styleEdits('{}', readConfig('{}').config.bridges, 'Sun', 'auto')).toEqual([]);
    const text = '{ "bridges": "level" }';
    expect(styleEdits(text, readConfig(text).config.bridges, 'Sun', 'level')).toEqual([]);
  });
});
