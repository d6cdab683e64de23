import { describe, expect, it, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { applyEdits } from '../../src/engine/index';
import { translation } from '../../src/geometry/base/matrix';
import type { Reordering } from '../../src/protocol/views';
import { CheckedDocument } from '../../src/server/documents/checked-document';
import { CheckedProject } from '../../src/server/documents/checked-project';
import { previewStackOf } from '../../src/server/preview/preview-model';
import { reordering } from '../../src/server/preview/reordering';
import { necksOfLayer, SlipRequests } from '../../src/server/preview/slip-handlers';

const svg = (content: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30">${content}</svg>`;
const opened = (uri: string, text: string, version = 3) => TextDocument.create(uri, 'xml', version, text);

/** Two fields that touch at x = 30; the second has two openings with 1.2 mm between them. */
const fields = svg(`<g id="sky"><rect x="5" y="5" width="25" height="20"/></g>
<g id="marsh"><rect x="30" y="5" width="10" height="20"/><rect x="41.2" y="5" width="10" height="20"/></g>`);
const uri = 'file:///fields.svg';
const alone = CheckedDocument.check(opened(uri, fields), undefined);

describe('slips', () => {
  const answers = new SlipRequests();

  it('bare ground between colours comes as path and area', () => {
    const places = [null, translation(0.4, 0)];
    expect(answers.bareAfter(alone, { uri, places })).toMatchObject({ version: 3, places: 1 });
    // Of the 20 mm of the seam 1 mm at each end is outline.
    expect(answers.bareAfter(alone, { uri, places }).area).toBeCloseTo(0.4 * 18, 1);
    expect(answers.bareAfter(alone, { uri, places }).seams).toMatch(/^M[-\d. LZM]+Z$/);
    expect(answers.bareAfter(alone, { uri, places: [] })).toMatchObject({ area: 0, whole: 0, seams: '' });
  });

  it('the sweep is by the allowance of the project', () => {
    const sweep = answers.sweep(alone, { uri, layer: 1 });
    expect(sweep).toMatchObject({ layer: 1, slip: 0.5 });
    expect(sweep.areas).toHaveLength(24);
    expect(sweep.areas.indexOf(Math.max(...sweep.areas))).toBe(0);
    expect(sweep.safe).toBeLessThan(0.02);
  });
});

test('necks within the limit are measured too', () => {
  const { necks } = necksOfLayer(alone, { uri, layer: 1 });
  expect(necks.map(({ width }) => width.toFixed(2))).toEqual(['1.20']);
  expect(necksOfLayer(alone, { uri, layer: 7 }).necks).toEqual([]);
});

describe('another order', () => {
  const nothingOpen = () => undefined;
  const refusal = (answer: Reordering) => ('refusal' in answer ? answer.refusal : undefined);

  it('of a file by itself is an edit of the file, for the version that was looked at', () => {
    const answer = reordering(alone, { uri, version: 3, layer: 0, to: 1 }, nothingOpen);
    expect(answer).toMatchObject({ uri, version: 3 });
    if ('refusal' in answer) throw new Error(answer.refusal);
    const moved = CheckedDocument.check(opened(uri, applyEdits(fields, answer.edits), 4), undefined);
    expect(previewStackOf(moved).layers.map(({ name }) => name)).toEqual(['marsh', 'sky']);
    expect(refusal(reordering(alone, { uri, version: 2, layer: 0, to: 1 }, nothingOpen))).toMatch(/has changed/);
  });

  describe('of a project', () => {
    const config = 'file:///print/tombolo.json';
    const files: Record<string, string> = {
      'file:///print/sky.svg': svg('<rect x="5" y="5" width="25" height="20"/>'),
      'file:///print/two.svg': fields,
    };
    const project = (text: string) => {
      const checked = CheckedProject.check({ uri: config, text }, (asked) =>
        files[asked] === undefined ? undefined : { document: opened(asked, files[asked]), open: true },
      );
      return checked.documents.get('sky.svg') as CheckedDocument;
    };
    const entries = '{"layers": [{"from": "sky.svg"}, {"from": "two.svg#marsh"}]}';

    it('is an edit of tombolo.json, open or not', () => {
      const checked = project(entries);
      const params = { uri: 'file:///print/sky.svg', version: 3, layer: 1, to: 0 };
      const answer = reordering(checked, params, nothingOpen);
      if ('refusal' in answer) throw new Error(answer.refusal);
      expect(answer).toMatchObject({ uri: config, version: 0 });
      expect(applyEdits(entries, answer.edits)).toBe('{"layers": [{"from": "two.svg#marsh"}, {"from": "sky.svg"}]}');
      expect(reordering(checked, params, () => opened(config, entries, 9))).toMatchObject({ uri: config, version: 9 });
      expect(refusal(reordering(checked, params, () => opened(config, '{}', 9)))).toMatch(/tombolo.json has changed/);
    });

    it('of layers that one entry names together is an edit of their file; others do not mix with them', () => {
      const checked = project('{"layers": [{"from": "sky.svg"}, {"from": "two.svg"}]}');
      const params = { uri: 'file:///print/sky.svg', version: 3 };
      expect(reordering(checked, { ...params, layer: 1, to: 2 }, nothingOpen)).toMatchObject({
        uri: 'file:///print/two.svg',
      });
      expect(refusal(reordering(checked, { ...params, layer: 0, to: 2 }, nothingOpen))).toMatch(/"two.svg"/);
      expect(refusal(reordering(checked, { ...params, layer: 0, to: 9 }, nothingOpen))).toMatch(/no such place/);
    });
  });
});
