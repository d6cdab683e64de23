import { describe, expect, it } from 'vitest';
import { isCutFile, readConfig } from '../../../src/engine/index';
import { layerId } from '../../../src/sheet/layer/layer-id';
import { CutRequests } from '../../../src/worker/bench/cut-requests';
import { CheckedDocument } from '../../../src/worker/documents/checked-document';
import { CheckedProject } from '../../../src/worker/documents/checked-project';

const svg = (content: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${content}</svg>`;
const uri = 'file:///trail/marsh%20edge.svg';
const SOUND = svg(
  '<g id="sky"><rect x="10" y="10" width="20" height="20"/></g><g id="sun"><circle cx="45" cy="20" r="5"/><circle cx="20" cy="20" r="3"/></g>',
);
const WITH_ISLAND = svg('<path fill-rule="evenodd" d="M10 10H30V30H10ZM15 15H25V25H15Z"/>');

const config = (text: string) => ({ uri: 'file:///trail/tombolo.json', text, config: readConfig(text).config });
const checked = (text: string, settings?: string) =>
  CheckedDocument.check({ uri, version: 5, open: true, text }, settings === undefined ? undefined : config(settings));

const requests = new CutRequests();
const asked = { as: ['svg', 'dxf'], kerf: 0, marks: 'none', anyway: false } as const;

describe('what cutting takes', () => {
  it('is told sheet by sheet, without a time where the machine is not described', () => {
    const { version, sheets, kerf } = requests.figures(checked(SOUND));
    expect([version, kerf]).toEqual([5, 0]);
    expect(sheets.map(({ layer, cuts, seconds }) => [layer, cuts, seconds])).toEqual([
      ['#0', 2, undefined],
      ['#1', 3, undefined],
    ]);
    expect(sheets[0]!.length).toBeCloseTo(80 + 200, 6);
    expect(sheets[1]!.length).toBeCloseTo(16 * Math.PI + 200, 3);
  });

  it('with the time and the kerf of the project', () => {
    const cutter = '{"cutter": {"kerf": "0.2mm", "compensated": true, "speed": "20mm/s", "acceleration": "500mm/s²"}}';
    const { sheets, kerf } = requests.figures(checked(SOUND, cutter));
    expect(kerf).toBe(0.2);
    expect(sheets[0]!.seconds).toBeGreaterThan(280 / 20);
    expect(requests.figures(checked(SOUND, cutter.replace('true', 'false'))).kerf).toBe(0);
  });
});

describe('the order of the cuts', () => {
  it('lies where the sheet lies, its margin included', () => {
    const order = requests.order(checked(SOUND, '{"margin": "5mm"}'), { layer: layerId('', 1) })!;
    expect(order).toMatchObject({ version: 5, layer: '#1', home: { x: -5, y: -5 } });
    expect(order.cuts.map(({ kind }) => kind)).toEqual(['opening', 'opening', 'edge']);
    const [first] = order.cuts;
    expect(Math.hypot(first!.from.x - 20, first!.from.y - 20)).toBeCloseTo(3, 6);
    expect(first!.line.startsWith(`M${first!.from.x} ${first!.from.y}L`)).toBe(true);
    expect(order.cuts[2]!.line).toContain('-5 45');
  });

  it('of a layer that is not there is none', () => {
    expect(requests.order(checked(SOUND), { layer: layerId('', 7) })).toBeUndefined();
  });
});

describe('files', () => {
  it('are made for each sheet and format, with the cautions of the checks', () => {
    const { files, errors, cautions, notes } = requests.files(checked(SOUND, '{"material": "film-0.2"}'), {
      ...asked,
      marks: 'labels',
    });
    expect(errors).toBe(0);
    expect(files.map(({ name }) => name)).toEqual(['01-sky.svg', '01-sky.dxf', '02-sun.svg', '02-sun.dxf']);
    expect(files.every(({ text }) => isCutFile(text.slice(0, 512)))).toBe(true);
    expect(files[0]!.text).toContain('#0000ff');
    expect(notes).toEqual([]);
    expect(cautions.at(-1)).toMatch(/^Never leave a laser running unattended/);
  });

  it('are none while errors are left, unless that is wanted', () => {
    const island = checked(WITH_ISLAND);
    expect(requests.files(island, asked)).toMatchObject({
      files: [],
      errors: 1,
      first: expect.stringMatching(/^Island, 100\.0 mm²/),
    });
    const { files, errors } = requests.files(island, { ...asked, anyway: true });
    expect([files.length, errors]).toEqual([2, 1]);
  });

  it('say what of the material a laser must not cut', () => {
    const { errors, first } = requests.files(checked(SOUND, '{"material": "vinyl-0.08"}'), asked);
    expect([errors, first]).toEqual([1, expect.stringMatching(/^Never cut .* with a laser/)]);
  });
});

describe('the page for the wall', () => {
  it('is called like the drawing, or like the folder of the project', () => {
    expect(requests.job(checked(SOUND)).files.map(({ name }) => name)).toEqual(['job.html', 'job.pdf']);
    expect(requests.job(checked(SOUND)).files[0]!.text).toContain('<h1>marsh edge</h1>');
    const layers = config('{"layers": [{"from": "a.svg"}, {"from": "b.svg"}]}');
    const file = (name: string, text: string) =>
      [name, { uri: `file:///trail/${name}`, version: 1, open: true, text }] as const;
    const accepted = SOUND.replace('<g', '<!-- tombolo accept bare-gap: meant so --><g');
    const project = CheckedProject.check(layers, new Map([file('a.svg', SOUND), file('b.svg', accepted)]));
    const page = requests.job(project.documents.get('a.svg')!).files[0]!.text;
    expect(page).toContain('<h1>trail</h1>');
    expect(page).toContain('bare-gap: meant so');
  });
});
