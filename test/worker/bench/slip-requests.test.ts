import { describe, expect, it, test } from 'vitest';
import { applyEdits, readConfig } from '../../../src/engine/index';
import { translation } from '../../../src/geometry/base/matrix';
import type { Reordering } from '../../../src/protocol/views';
import { layerId } from '../../../src/sheet/layer/layer-id';
import { previewStackOf } from '../../../src/worker/bench/preview-model';
import { bestOrder, reordering } from '../../../src/worker/bench/reordering';
import { necksOfLayer, SlipRequests } from '../../../src/worker/bench/slip-requests';
import { CheckedDocument } from '../../../src/worker/documents/checked-document';
import { CheckedProject } from '../../../src/worker/documents/checked-project';

const svg = (content: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30">${content}</svg>`;
const opened = (uri: string, text: string, version = 3) => ({ uri, version, open: true, text });

/** Two fields that touch at x = 30; the second has two openings with 1.2 mm between them. */
const fields = svg(`<g id="sky"><rect x="5" y="5" width="25" height="20"/></g>
<g id="marsh"><rect x="30" y="5" width="10" height="20"/><rect x="41.2" y="5" width="10" height="20"/></g>`);
const uri = 'file:///fields.svg';
const alone = CheckedDocument.check(opened(uri, fields), undefined);

describe('slips', () => {
  const answers = new SlipRequests();

  it('bare ground between colours comes as path and area', () => {
    const places = [{ layer: layerId('', 1), place: translation(0.4, 0) }];
    expect(answers.bareAfter(alone, { places })).toMatchObject({ version: 3, places: 1 });
    // Of the 20 mm of the seam 1 mm at each end is outline.
    expect(answers.bareAfter(alone, { places }).area).toBeCloseTo(0.4 * 18, 1);
    expect(answers.bareAfter(alone, { places }).seams).toMatch(/^M[-\d. LZM]+Z$/);
    expect(answers.bareAfter(alone, { places: [] })).toMatchObject({ area: 0, whole: 0, seams: '' });
  });

  it('the sweep is by the allowance of the project', () => {
    const sweep = answers.sweep(alone, { layer: layerId('', 1) });
    if (!sweep) throw new Error('no sweep');
    expect(sweep).toMatchObject({ layer: '#1', slip: 0.5 });
    expect(sweep.areas).toHaveLength(24);
    expect(sweep.areas.indexOf(Math.max(...sweep.areas))).toBe(0);
    expect(sweep.safe).toBeLessThan(0.02);
  });
});

test('necks within the limit are measured too', () => {
  const { necks } = necksOfLayer(alone, { layer: layerId('', 1) });
  expect(necks.map(({ width }) => width.toFixed(2))).toEqual(['1.20']);
  expect(necksOfLayer(alone, { layer: layerId('', 7) }).necks).toEqual([]);
});

describe('another order', () => {
  const refusal = (answer: Reordering) => ('refusal' in answer ? answer.refusal : undefined);

  it('of a file by itself is an edit of the file, for the version that was looked at', () => {
    const answer = reordering(alone, { version: 3, layer: layerId('', 0), to: layerId('', 1) });
    expect(answer).toMatchObject({ uri, version: 3 });
    if ('refusal' in answer) throw new Error(answer.refusal);
    const moved = CheckedDocument.check(opened(uri, applyEdits(fields, answer.edits), 4), undefined);
    expect(previewStackOf(moved).layers.map(({ name }) => name)).toEqual(['marsh', 'sky']);
    expect(refusal(reordering(alone, { version: 2, layer: layerId('', 0), to: layerId('', 1) }))).toMatch(
      /has changed/,
    );
  });

  it('with the fewest islands comes with its counts, and with the edits that make it', () => {
    const ring = '<g id="ring" fill="#224433"><path fill-rule="evenodd" d="M10 5h20v20h-20z M15 10v10h10v-10z"/></g>';
    const late = svg(`<g id="sun" fill="#ffdd55"><path d="M15 10h10v10h-10z"/></g>\n${ring}`);
    const best = bestOrder(CheckedDocument.check(opened(uri, late), undefined));
    expect(best).toMatchObject({ version: 3, islands: 1, before: 1, after: 0, change: { uri, version: 3 } });
    if ('refusal' in best || !best.change || 'refusal' in best.change) throw new Error('no change');
    expect(best.order.map(({ name }) => name)).toEqual(['ring', 'sun']);
    const settled = bestOrder(CheckedDocument.check(opened(uri, applyEdits(late, best.change.edits), 4), undefined));
    expect(settled).toMatchObject({ version: 4, islands: 1, before: 0, after: 0, change: undefined });
  });

  it('with the fewest islands is not looked for among too many layers', () => {
    const many = Array.from({ length: 17 }, (_, i) => `<g id="l${i}"><rect x="${3 * i}" width="2" height="2"/></g>`);
    expect(bestOrder(CheckedDocument.check(opened(uri, svg(many.join(''))), undefined))).toMatchObject({
      refusal: 'This stack has 17 layers; the best order is only found for up to 16.',
    });
  });

  describe('of a project', () => {
    const config = 'file:///print/tombolo.json';
    const files = new Map([
      ['sky.svg', opened('file:///print/sky.svg', svg('<rect x="5" y="5" width="25" height="20"/>'))],
      ['two.svg', opened('file:///print/two.svg', fields)],
    ]);
    const project = (text: string) => {
      const checked = CheckedProject.check({ uri: config, text, config: readConfig(text).config }, files);
      return checked.documents.get('sky.svg') as CheckedDocument;
    };
    const entries = '{"layers": [{"from": "sky.svg"}, {"from": "two.svg#marsh"}]}';

    it('is an edit of tombolo.json, open or not', () => {
      const checked = project(entries);
      const params = { version: 3, layer: layerId('two.svg', 0), to: layerId('sky.svg', 0) };
      const answer = reordering(checked, params);
      if ('refusal' in answer) throw new Error(answer.refusal);
      expect(answer).toMatchObject({ uri: config, version: 0 });
      expect(applyEdits(entries, answer.edits)).toBe('{"layers": [{"from": "two.svg#marsh"}, {"from": "sky.svg"}]}');
      expect(reordering(checked, params, { version: 9, text: entries })).toMatchObject({ uri: config, version: 9 });
      expect(refusal(reordering(checked, params, { version: 9, text: '{}' }))).toMatch(/tombolo.json has changed/);
    });

    it('of layers that one entry names together is an edit of their file; others do not mix with them', () => {
      const checked = project('{"layers": [{"from": "sky.svg"}, {"from": "two.svg"}]}');
      const [sky, field, marsh, beyond] = [
        layerId('sky.svg', 0),
        layerId('two.svg', 0),
        layerId('two.svg', 1),
        layerId('two.svg', 9),
      ];
      expect(reordering(checked, { version: 3, layer: field, to: marsh })).toMatchObject({
        uri: 'file:///print/two.svg',
      });
      expect(refusal(reordering(checked, { version: 3, layer: sky, to: field }))).toMatch(/"two.svg"/);
      expect(reordering(checked, { version: 3, layer: sky, to: marsh })).toMatchObject({ uri: config, version: 0 });
      expect(refusal(reordering(checked, { version: 3, layer: sky, to: beyond }))).toMatch(/no such place/);
    });
  });
});
