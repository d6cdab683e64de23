import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { layerProblems } from '../../../src/engine/check/config-problems';
import { readConfig } from '../../../src/engine/check/known-checks';
import { projectFiles } from '../../../src/engine/check/project-layers';
import { foundIn, project, ring, sheet, square } from '../project-files';

const sun = sheet(`<title>Sun</title>${ring(5, 5)}`);
const heron = sheet(`<g id="body" fill="#3b4a54">${square(5, 5, 10)}</g><g id="eye">${square(40, 40, 5)}</g>`);

const layersOf = (...args: Parameters<typeof project>) =>
  project(...args).stack.layers.map(({ file, sheet: { layer } }) => `${file} ${layer.name} ${layer.paint}`);

describe('the stack of a project', () => {
  it('is in the order of layers, with the names and paints that they state', () => {
    const files = { 'sun.svg': sun, 'heron.svg': heron };
    const layers = [
      { from: 'heron.svg#eye', name: 'the eye', paint: '#ffee00' },
      { from: 'sun.svg' },
      { from: 'heron.svg#body' },
    ];
    expect(layersOf(files, layers)).toEqual([
      'heron.svg the eye #ffee00',
      'sun.svg Sun #000000',
      'heron.svg body #3b4a54',
    ]);
    const { files: reports } = project(files, layers);
    expect([...reports.keys()]).toEqual(['heron.svg', 'sun.svg']);
    expect(reports.get('heron.svg')?.sheets.map(({ layer }) => layer.name)).toEqual(['the eye', 'body']);
  });

  it('takes all layers of a file that is named without more, and one where a name or a paint is stated', () => {
    expect(layersOf({ 'heron.svg': heron }, [{ from: 'heron.svg' }])).toEqual([
      'heron.svg body #3b4a54',
      'heron.svg eye #000000',
    ]);
    expect(layersOf({ 'heron.svg': heron }, [{ from: 'heron.svg', name: 'bird' }])).toEqual(['heron.svg bird #3b4a54']);
    expect(
      layersOf({ 'birds/heron.svg': sheet(square(5, 5, 9)) }, [{ from: './birds/heron.svg', paint: '#aabbcc' }]),
    ).toEqual(['birds/heron.svg heron #aabbcc']);
  });

  it('takes an element with what a use draws in it, wherever that stands', () => {
    const used = sheet(
      `<defs><g id="dot">${square(0, 0, 5)}</g></defs><g id="a">` +
        `<g id="b"><use href="#dot" x="9" y="9"/></g>${square(30, 30, 9)}</g>`,
    );
    const { stack } = project({ 'a.svg': used }, [{ from: 'a.svg#b' }]);
    expect(stack.layers.map(({ sheet: { openings } }) => openings.length)).toEqual([1]);
    expect(project({ 'a.svg': used }, [{ from: 'a.svg#dot' }]).faults).toMatchObject([{ severity: 'warning' }]);
  });

  it('goes back to a paint of the file when the stated one is taken out', () => {
    const first = project({ 'heron.svg': heron }, [{ from: 'heron.svg#body', paint: '#ff0000' }]);
    const [layer] = project({ 'heron.svg': heron }, [{ from: 'heron.svg#body' }], first).stack.layers;
    expect(layer?.sheet.layer.paint).toBe('#3b4a54');
  });
});

describe('the findings of a project', () => {
  it('lie in the file that they are about, and are those of the file alone', () => {
    const report = project({ 'sun.svg': sun, 'heron.svg': heron }, [{ from: 'sun.svg' }, { from: 'heron.svg' }]);
    expect(foundIn(report)).toEqual(['sun.svg: floating-island']);
    expect(report.files.get('sun.svg')?.findings[0]?.span).toEqual(check(sun).findings[0]?.span);
  });

  it('are the same after an edit as they would be from scratch', () => {
    const layers = [{ from: 'sun.svg' }, { from: 'heron.svg#body' }, { from: 'heron.svg#eye' }];
    const first = project({ 'sun.svg': sun, 'heron.svg': heron }, layers);
    const changed = heron.replace('</svg>', `${ring(20, 20)}</svg>`).replace('"5"', '"6"');
    const edited = { 'sun.svg': sun, 'heron.svg': changed };
    const again = project(edited, layers, first);
    const fresh = project(edited, layers);
    for (const [file, { complete }] of fresh.files) {
      expect(again.files.get(file)?.complete.map(({ subject: _, ...finding }) => finding)).toEqual(
        complete.map(({ subject: _, ...finding }) => finding),
      );
    }
  });

  it('of a file that is the same are not looked for again', () => {
    const layers = [{ from: 'sun.svg' }, { from: 'heron.svg' }];
    const first = project({ 'sun.svg': sun, 'heron.svg': heron }, layers);
    const again = project({ 'sun.svg': sun, 'heron.svg': heron.replace('"10"', '"11"') }, layers, first);
    const kept = (check: string) => first.files.get('sun.svg')?.results.find((result) => result.check === check);
    expect(again.files.get('sun.svg')?.sheets[0]).toBe(first.files.get('sun.svg')?.sheets[0]);
    expect(again.files.get('sun.svg')?.results).toContain(kept('thin-bridge'));
    const [before, after] = [first, again].map(({ files }) => files.get('heron.svg')?.sheets ?? []);
    expect(after?.[1]?.openings).toBe(before?.[1]?.openings);
    expect(after?.[0]?.openings).not.toBe(before?.[0]?.openings);
  });

  it('follow a change of the limits', () => {
    const near = { 'a.svg': sheet(square(5, 5, 9) + square(15, 5, 9)) };
    const first = project(near, [{ from: 'a.svg' }]);
    expect(foundIn(first)).toEqual([]);
    const wider = project(near, [{ from: 'a.svg' }], first, { limits: { bridge: '1.2mm' } });
    expect(foundIn(wider)).toEqual(['a.svg: thin-bridge']);
    expect(foundIn(project(near, [{ from: 'a.svg' }], first, { checks: { 'thin-bridge': 'off' } }))).toEqual([]);
  });
});

describe('whatever is in the files and in layers', () => {
  it('there is a report, the same from scratch as after an edit', () => {
    const some = [sun, heron, '<svg', '<svg><g id="a"><path d="M0 0"/></g></svg>'];
    const text = fc.oneof(fc.string(), fc.constantFrom(...some));
    const known = ['a.svg', 'b.svg', 'b.svg#body', 'a.svg#', '#', './a.svg', 'b.svg#eye'];
    const from = fc.oneof(fc.string(), fc.constantFrom(...known));
    fc.assert(
      fc.property(text, text, text, fc.array(from, { maxLength: 4 }), (a, b, later, names) => {
        const layers = names.map((name) => ({ from: name }));
        const first = project({ 'a.svg': a, 'b.svg': b }, layers);
        const files = { 'a.svg': later, 'b.svg': b };
        const again = project(files, layers, first);
        expect(foundIn(again)).toEqual(foundIn(project(files, layers)));
        const sheets = [...again.files.values()].flatMap((report) => report.sheets);
        expect(again.stack.layers.length).toBe(sheets.length);
      }),
      { numRuns: 150 },
    );
  });
});

describe('layers that name nothing', () => {
  const files = { 'sun.svg': sun };
  const layers = [{ from: 'moon.svg' }, { from: 'sun.svg#disc' }, { from: 'sun.svg' }, { from: '//host/share/a.svg' }];

  it('are faults, and the rest is checked', () => {
    const report = project(files, layers);
    expect(report.missing).toEqual(['moon.svg']);
    expect(report.faults.map(({ from, message }) => [from, message.slice(0, 24)])).toEqual([
      ['moon.svg', 'No readable file "moon.s'],
      ['sun.svg#disc', 'No element has the id "d'],
      ['//host/share/a.svg', 'Not a path from this tom'],
    ]);
    expect(foundIn(report)).toEqual(['sun.svg: floating-island']);
  });

  it('are underlined in tombolo.json', () => {
    const text = `{ "layers": ${JSON.stringify(layers, undefined, 1)}, // mine\n }`;
    const spans = layerProblems(text, project(files, layers).faults).map(({ span }) => text.slice(span.from, span.to));
    expect(spans).toEqual(['"moon.svg"', '"sun.svg#disc"', '"//host/share/a.svg"']);
    expect(layerProblems('{', project(files, layers).faults)).toEqual([]);
  });

  it('never lead out of the reach of a relative path', () => {
    const named = [
      'a.svg',
      './b/../c.svg',
      '../d.svg#x',
      'post #8.svg',
      'plain#x',
      'C:\\e.svg',
      'file:///f.svg',
      '\\\\g\\h.svg',
      '/i',
      '',
    ];
    const { config } = readConfig(JSON.stringify({ layers: named.map((from) => ({ from })) }));
    expect(projectFiles(config)).toEqual(['a.svg', 'c.svg', '../d.svg', 'post #8.svg', 'plain']);
  });
});
