import { describe, expect, it } from 'vitest';
import { limitsOf, materialOf } from '../../src/config/limits';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { readConfig } from '../../src/engine/check/known-checks';

/** The problems with the text they point at. */
function problemsIn(text: string): [string, string][] {
  return readConfig(text).problems.map(({ message, detail = '', span }) => [
    text.slice(span.from, span.to),
    `${message} ${detail}`,
  ]);
}

describe('readConfig', () => {
  it('reads every key', () => {
    const { config, problems } = readConfig(`{
      "size": {"width": "148mm", "height": "10.5cm"}, "margin": "5mm", "reading": "sheet", "material": "film-0.19",
      "cutter": {
        "tool": "knife", "bed": ["300mm", "200mm"], "kerf": "0.1mm", "compensated": false,
        "speed": "1200mm/min", "acceleration": "500mm/s²", "corner": "5mm/s", "jerk": "10000mm/s³"
      },
      "paint": {"coverage": "1.5m²", "coats": 2, "wait": "10 min", "layers": {"sky": {"coats": 1}}},
      "limits": {"bridge": "1mm", "opening": "0.7mm", "slip": "0.5mm"},
      "bridges": {"style": "upright", "layers": {"body": "hidden"}}, "ground": "#C8B89A",
      "bendingStiffness": ["9.5mN·m", "4.8mNm"], "spray": {"distance": "15cm", "thrust": "50mN"},
      "droop": {"length": "150mm", "by": "22mm", "grammage": "240g/m²"},
      "layers": [{"from": "sky.svg", "name": "sky", "paint": "#8FD3FF"}, {"from": "heron.svg#body"}],
      "checks": {"thin-bridge": "error", "loose-tongue": "off"},
      "accept": {"thin-bridge": "  posts are sprayed once a year "},
      "baseline": [{"check": "thin-bridge", "layer": "body", "at": [31.2, 18.7]}, {"check": "oversize-sheet", "file": "sky.svg"}],
      "ignore": ["drafts/**"]
    }`);
    expect(problems).toEqual([]);
    expect(config).toEqual({
      width: 148,
      height: 105,
      margin: 5,
      reading: 'sheet',
      material: 'film-0.19',
      materials: {},
      bed: [300, 200],
      tool: 'knife',
      kerf: 0.1,
      compensated: false,
      speed: 20,
      acceleration: 500,
      corner: 5,
      jerk: 10_000,
      bendingStiffness: 4.8,
      droop: { length: 150, by: 22, grammage: 240 },
      spray: { distance: 150, thrust: 0.05 },
      paint: { coverage: 1.5, coats: 2, wait: '10 min', layers: { sky: { coats: 1 } } },
      limits: { bridge: 1, opening: 0.7, slip: 0.5 },
      bridges: { style: 'upright', layers: { body: 'hidden' } },
      ground: '#c8b89a',
      layers: [
        { from: 'sky.svg', name: 'sky', paint: '#8fd3ff' },
        { from: 'heron.svg#body', name: undefined, paint: undefined },
      ],
      checks: { 'thin-bridge': 'error', 'loose-tongue': 'off' },
      accept: { 'thin-bridge': 'posts are sprayed once a year' },
      acceptedIn: [],
      baseline: [
        { check: 'thin-bridge', layer: 'body', at: [31.2, 18.7] },
        { check: 'oversize-sheet', file: 'sky.svg', layer: undefined, at: undefined },
      ],
      ignore: ['drafts/**'],
    });
  });

  it('reads own materials, wherever the line stands that names one', () => {
    const { config, problems } = readConfig(`{"material": "post-card", "materials": {
      "post-card": {"title": "grey board", "thickness": "0.7mm", "stiffness": "2.5GPa", "density": "0.7g/cm3",
        "bridge": "0.9mm", "opening": "0.8mm", "kerf": "0.12mm", "laser": "usual"},
      "card-0.3": {"thickness": "0.31mm"}
    }}`);
    expect(problems).toEqual([]);
    expect(materialOf(config)).toEqual({
      title: 'grey board',
      short: '0.7 mm grey board',
      thickness: 0.7,
      stiffness: 2500,
      density: 700,
      bridge: 0.9,
      opening: 0.8,
      kerf: 0.12,
      laser: 'usual',
    });
    expect(limitsOf(config)).toEqual({ bridge: 0.9, opening: 0.8, slip: 0.5, material: '0.7 mm grey board' });
    // Ours is left behind; what is not said is as of card, but a laser is asked for first.
    expect(materialOf({ ...config, material: 'card-0.3' })).toMatchObject({
      thickness: 0.31,
      bridge: 0.8,
      laser: 'ask',
    });
  });

  it.each<[string, string, RegExp]>([
    ['{"bridg": 1}', '"bridg"', /Unknown key "bridg"/],
    [
      '{"limits": {"brigde": "1mm"}}',
      '"brigde"',
      /Unknown key "brigde" \(ignored\)\. Did you mean "bridge"\? .*in limits: bridge, opening, slip/,
    ],
    ['{"margin": 5}', '5', /length with its unit/],
    ['{"margin": "5"}', '"5"', /length with its unit/],
    ['{"margin": "-5mm"}', '"-5mm"', /length with its unit/],
    ['{"size": {"width": "0mm"}}', '"0mm"', /greater than 0/],
    ['{"size": "148mm"}', '"148mm"', /size as an object/],
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
    [
      '{"layers": [{"from": "a.svg", "colour": "#123456"}]}',
      '"colour"',
      /Unknown key "colour" .*in a layer: from, name, paint/,
    ],
    ['{"layers": ["a.svg"]}', '"a.svg"', /a layer as an object/],
    ['{"cutter": {"speed": "20mm"}}', '"20mm"', /speed with its unit/],
    ['{"cutter": {"speed": "0mm/s"}}', '"0mm/s"', /greater than 0/],
    ['{"cutter": {"speed": 20}}', '20', /speed with its unit/],
    ['{"cutter": {"acceleration": "500mm/s"}}', '"500mm/s"', /acceleration with its unit/],
    ['{"cutter": {"power": 40}}', '"power"', /Unknown key "power" .*in cutter.*speed, acceleration/],
    ['{"ground": "sand"}', '"sand"', /colour such as/],
    ['{"materials": []}', '[]', /materials as an object/],
    ['{"materials": {"mine": "card"}}', '"card"', /a material as an object/],
    ['{"materials": {"mine": {"title": "x"}}}', '"mine"', /"mine" needs "thickness"/],
    ['{"materials": {"mine": {"thickness": "thick"}}}', '"thick"', /length with its unit/],
    ['{"materials": {"mine": {"thickness": "0mm"}}}', '"0mm"', /greater than 0/],
    ['{"materials": {"mine": {"thickness": "1mm", "stiffness": 3000}}}', '3000', /stiffness with its unit/],
    ['{"materials": {"mine": {"thickness": "1mm", "density": "800"}}}', '"800"', /density with its unit/],
    ['{"materials": {"mine": {"thickness": "1mm", "laser": "yes"}}}', '"yes"', /"usual", "ask", "never"/],
    ['{"materials": {"mine": {"thickness": "1mm", "weight": 1}}}', '"weight"', /Unknown key "weight" .*in a material/],
    ['{"materials": {"mine": {"thickness": "1mm"}}, "material": "yours"}', '"yours"', /one of:.*"mine"/],
    ['{"accept": {"thin-bridge": " "}}', '" "', /why thin-bridge is accepted/],
    ['{"accept": {"thin-bridge": true}}', 'true', /why thin-bridge is accepted/],
    ['{"accept": {"unreadable-path": "old"}}', '"unreadable-path"', /Unknown key "unreadable-path" .*in accept/],
    ['{"accept": ["thin-bridge"]}', '["thin-bridge"]', /accept as an object/],
    ['{"baseline": "old.json"}', '"old.json"', /must be a list/],
    ['{"baseline": [{"layer": "body"}]}', '{"layer": "body"}', /needs "check"/],
    ['{"baseline": [{"check": "thin"}]}', '"thin"', /must be one of/],
    ['{"baseline": [{"check": "thin-bridge", "at": [1]}]}', '[1]', /two numbers in mm/],
    ['{"baseline": ["thin-bridge"]}', '"thin-bridge"', /a baseline entry as an object/],
    ['{"limits": {"slip": "much"}}', '"much"', /length with its unit/],
    ['{"checks": {"thin-bridge": "bad"}}', '"bad"', /"error", "warning", "info", "hint", "off"/],
    ['{"checks": {"thin-brigde": "error"}}', '"thin-brigde"', /Unknown key/],
    ['{"material": "card-0.33"}', '"card-0.33"', /^Unknown material "card-0.33"\. Did you mean "card-0.3"\?/],
    ['{"cuter": {}}', '"cuter"', /^Unknown key "cuter" \(ignored\)\. Did you mean "cutter"\?/],
    ['[]', '[]', /tombolo.json as an object/],
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
      expect.stringContaining('length'),
      expect.stringContaining('Unknown key'),
      expect.stringContaining('Not valid JSON'),
    ]);
  });

  it('takes keys of every object for unknown', () => {
    expect(problemsIn('{"constructor": 1, "toString": 2}')).toHaveLength(2);
  });

  it.each([
    '"size": {"width": "wide"}',
    '"margin": 5',
    '"reading": "holes"',
    '"material": "vellum"',
    '"materials": {"mine": {}}',
    '"cutter": {"speed": "fast"}',
    '"ground": "sand"',
    '"layers": [{}]',
    '"checks": {"thin-brigde": "off"}',
    '"accept": {"thin-bridge": ""}',
    '"baseline": [{}]',
    '"unknown": {}',
  ])('reads what stands beside %s', (wrong) => {
    const { config, problems } = readConfig(`{"limits": {"bridge": "1.2mm"}, ${wrong}, "cutter": {"tool": "knife"}}`);
    expect(problems.length).toBeGreaterThan(0);
    expect([config.limits, config.tool]).toEqual([{ bridge: 1.2 }, 'knife']);
  });

  it('takes an empty text for no configuration', () => {
    expect(readConfig('').config).toEqual(DEFAULT_CONFIG);
  });
});
