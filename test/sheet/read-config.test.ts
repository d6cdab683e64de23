import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../src/sheet/config';
import { readConfig } from '../../src/sheet/read-config';

/** The problems with the text they point at. */
function problemsIn(text: string): [string, string][] {
  return readConfig(text).problems.map(({ message, span }) => [text.slice(span.from, span.to), message]);
}

describe('readConfig', () => {
  it('reads every key', () => {
    const { config, problems } = readConfig(`{
      "size": {"width": "148mm", "height": "10.5cm"}, "margin": "5mm", "reading": "sheet", "material": "film-0.19",
      "cutter": {"tool": "knife", "bed": ["300mm", "200mm"], "kerf": "0.1mm", "compensated": false},
      "limits": {"bridge": "1mm", "opening": "0.7mm", "slip": "0.5mm"},
      "layers": [{"from": "sky.svg", "name": "sky", "paint": "#8FD3FF"}, {"from": "heron.svg#body"}],
      "checks": {"thin-bridge": "error", "loose-tongue": "off"}
    }`);
    expect(problems).toEqual([]);
    expect(config).toEqual({
      width: 148, height: 105, margin: 5, reading: 'sheet', material: 'film-0.19', bed: [300, 200],
      tool: 'knife', kerf: 0.1, compensated: false, limits: { bridge: 1, opening: 0.7, slip: 0.5 },
      layers: [
        { from: 'sky.svg', name: 'sky', paint: '#8fd3ff' }, { from: 'heron.svg#body', name: undefined, paint: undefined },
      ],
      checks: { 'thin-bridge': 'error', 'loose-tongue': 'off' },
    });
  });

  it.each<[string, string, RegExp]>([
    ['{"bridg": 1}', '"bridg"', /Unknown key "bridg"/],
    ['{"limits": {"brigde": "1mm"}}', '"brigde"', /Unknown key "brigde" in limits.*bridge, opening, slip/],
    ['{"margin": 5}', '5', /length with its unit/],
    ['{"margin": "5"}', '"5"', /length with its unit/],
    ['{"margin": "-5mm"}', '"-5mm"', /length with its unit/],
    ['{"size": {"width": "0mm"}}', '"0mm"', /more than nothing/],
    ['{"size": "148mm"}', '"148mm"', /size must be an object/],
    ['{"reading": "holes"}', '"holes"', /"openings", "sheet", "outlines"/],
    ['{"material": "vellum"}', '"vellum"', /"card-0.3"/],
    ['{"cutter": {"bed": ["300mm"]}}', '["300mm"]', /two lengths/],
    ['{"cutter": {"bed": ["300mm", "wide"]}}', '"wide"', /length with its unit/],
    ['{"cutter": {"bed": "300mm"}}', '"300mm"', /two lengths/],
    ['{"margin": "1mm", "margin": "2mm"}', '"margin"', /written twice/],
    ['{"layers": [{"from": 3}]}', '3', /text in double quotes/],
    ['{"cutter": {"compensated": "yes"}}', '"yes"', /true or false/],
    ['{"cutter": {"tool": "saw"}}', '"saw"', /"laser", "knife"/],
    ['{"layers": {}}', '{}', /must be a list/],
    ['{"layers": [{"name": "sky"}]}', '{"name": "sky"}', /needs "from"/],
    ['{"layers": [{"from": "a.svg", "paint": "blue"}]}', '"blue"', /colour such as/],
    ['{"checks": {"thin-bridge": "bad"}}', '"bad"', /"error", "warning", "info", "hint", "off"/],
    ['{"checks": {"thin-brigde": "error"}}', '"thin-brigde"', /Unknown key/],
    ['[]', '[]', /tombolo.json must be an object/],
  ])('%s is reported at %s', (text, place, message) => {
    const problems = problemsIn(text);
    expect(problems).toHaveLength(1);
    expect(problems[0]?.[0]).toBe(place);
    expect(problems[0]?.[1]).toMatch(message);
  });

  it('still uses the rest when something is wrong', () => {
    const { config, problems } = readConfig('{"margin": "wide", "limits": {"bridge": "1.2mm"}, "colour": 1');
    expect(config).toEqual({ ...DEFAULT_CONFIG, limits: { bridge: 1.2 } });
    expect(problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('This is not JSON'), expect.stringContaining('length'), expect.stringContaining('Unknown key'),
    ]);
  });

  it('takes keys of every object for unknown', () => {
    expect(problemsIn('{"constructor": 1, "toString": 2}')).toHaveLength(2);
  });

  it('takes an empty text for no configuration', () => {
    expect(readConfig('').config).toEqual(DEFAULT_CONFIG);
  });
});
