import { createColors } from 'picocolors';
import { describe, expect, it } from 'vitest';
import { formatText } from '../../src/format/text';
import { file, finding, input, range } from './made-files';

describe('formatText', () => {
  it('a file with its layers, its findings and the counts', () => {
    const related = [{ message: 'holds this island', range: range(6, 2, 3, 300), at: undefined }];
    const island = finding({ check: 'floating-island', severity: 'error', message: 'Falls out.', layer: undefined });
    const layers = [
      ...file([]).layers,
      {
        name: 'reeds and sun',
        reading: 'sheet' as const,
        paint: '#ffb300',
        openings: 3,
        openingArea: 1,
        materialArea: 1,
        islands: 0,
        cutLength: 12,
      },
    ];
    expect(formatText(input([file([island, finding({ related, range: range(99, 0, 1, 900) })], { layers })]))).toBe(
      [
        'heron.svg  148 × 105 mm',
        '  layer          paint    reading   openings  islands  cut length',
        '  ink            #222222  openings        12        2    843.2 mm',
        '  reeds and sun  #ffb300  sheet            3        0     12.0 mm',
        '   5:13  error    Falls out. [floating-island]',
        '  100:1  warning  Bridge 0.42 mm wide; 0.80 mm is the least. [thin-bridge, ink]',
        '         7:3: holds this island',
        '',
        '1 file checked: 1 error, 1 warning.',
        '',
      ].join('\n'),
    );
  });

  it('shows how long cutting takes where it is known', () => {
    const [layer] = file([]).layers;
    const layers = [
      { ...layer!, cutTime: 185.2 },
      { ...layer!, name: 'sun' },
    ];
    expect(
      formatText(input([file([], { layers })]))
        .split('\n')
        .slice(1, 4),
    ).toEqual([
      '  layer  paint    reading   openings  islands  cut length    cut time',
      '  ink    #222222  openings        12        2    843.2 mm  3 min 05 s',
      '  sun    #222222  openings        12        2    843.2 mm',
    ]);
  });

  it('says where the size was not stated', () => {
    const unstated = file([], { size: { width: 52.9166667, height: 20, stated: false }, layers: [] });
    expect(formatText(input([unstated]))).toBe(
      'heron.svg  52.92 × 20 mm (not stated: pixels at 96 to the inch)\n\n1 file checked, nothing found.\n',
    );
    const empty = file([], { size: { width: 0, height: 0, stated: false }, layers: [] });
    expect(formatText(input([empty]))).toMatch(/^heron\.svg {2}no size\n/);
  });

  it('counts what is not listed, and not the configuration as a stencil', () => {
    const capped = file([finding()], { counts: { error: 0, warning: 900, info: 1, hint: 2 } });
    const problem = finding({ check: 'unreadable-config' });
    const config = file([problem], { path: 'tombolo.json', size: undefined, layers: [] });
    const text = formatText(input([capped, config]));
    expect(text).toMatch(/\n1 file checked: 0 errors, 901 warnings, 1 info, 2 hints\.\n$/);
  });

  it('quiet: files without errors are not shown, the counts are whole', () => {
    const sound = file([], { path: 'sound.svg', counts: { error: 0, warning: 3, info: 0, hint: 0 } });
    const torn = file([finding({ severity: 'error' })], { path: 'torn.svg' });
    const text = formatText(input([sound, torn], { quiet: true }));
    expect(text).not.toContain('sound.svg');
    expect(text).toMatch(/^torn\.svg /);
    expect(text).toMatch(/\n2 files checked: 1 error, 3 warnings\.\n$/);
    expect(formatText(input([sound], { quiet: true }))).toBe('');
  });

  it('no file could be read: stderr has said so, and there is nothing to add', () => {
    expect(formatText(input([]))).toBe('');
  });

  it('colours change nothing but colour', () => {
    const files = [file([finding(), finding({ severity: 'error' })])];
    const coloured = formatText(input(files, { colours: createColors(true) }));
    expect(coloured).toContain('\u001b[33mwarning\u001b[39m');
    expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(formatText(input(files)));
  });

  it('names from a file cannot steer the terminal', () => {
    const layers = [{ ...file([]).layers[0]!, name: '\u001b[2J\nink' }];
    const text = formatText(input([file([finding({ layer: '\u001b]0;x\u0007', message: 'a\rb' })], { layers })]));
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
  });

  it('says in a line where no fix holds, each reason once and without its details', () => {
    const refusals = [
      { title: 'Bridge this island', reason: 'No place was found at 50.1, 50.1 mm.' },
      { title: 'Bridge it at the shortest place', reason: 'No place was found at 50.1, 50.1 mm.' },
      {
        title: 'Cut the island away',
        reason: 'It would leave a bridge too thin to hold: 0.42 mm wide, 0.80 mm is the least.',
      },
    ];
    const lines = formatText(input([file([finding({ refusals })])])).split('\n');
    expect(lines.filter((line) => line.includes('no fix'))).toEqual([
      expect.stringMatching(
        /^ +no fix holds: No place was found at 50\.1, 50\.1 mm; It would leave a bridge too thin to hold$/,
      ),
    ]);
    expect(formatText(input([file([finding()])]))).not.toContain('no fix');
  });

  it('names the line of the program that draws it', () => {
    const at = { line: 6, character: 12 };
    const from = { path: 'gen.mjs', range: { start: at, end: at }, drawn: 'reed2, drawn here', callers: [] };
    expect(formatText(input([file([finding({ from })])]))).toContain(
      '[thin-bridge, ink]\n        gen.mjs:7:13: reed2, drawn here\n',
    );
  });
});
