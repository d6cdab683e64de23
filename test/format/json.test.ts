import { describe, expect, it } from 'vitest';
import { formatJson } from '../../src/format/json';
import { file, finding, input, range } from './made-files';

describe('formatJson', () => {
  it('has the shape of the contract, key for key', () => {
    const edits = [{ range: range(4, 12, 1, 210), text: '' }];
    const mends = [{ title: 'Widen to 0.80 mm', preferred: true, safe: false, edits }];
    const related = [{ message: 'holds this island', range: range(6, 2, 3, 300), at: { x: 1, y: 2 } }];
    const findings = [finding({ related, mends }), finding({ severity: 'error' }), finding({ severity: 'hint' })];
    const result = JSON.parse(formatJson(input([file(findings)])));
    expect(result).toEqual({
      version: 1,
      files: [
        {
          path: 'heron.svg',
          size: { width: 148, height: 105, stated: true },
          layers: [
            {
              name: 'ink',
              reading: 'openings',
              paint: '#222222',
              openings: 12,
              openingArea: 2210.4,
              materialArea: 13329.6,
              islands: 2,
              cutLength: 843.2,
            },
          ],
          findings: expect.any(Array),
        },
      ],
      summary: { error: 1, warning: 1, info: 0 },
    });
    expect(result.files[0].findings[0]).toEqual({
      check: 'thin-bridge',
      severity: 'warning',
      message: 'Bridge 0.42 mm wide; 0.80 mm is the least.',
      layer: 'ink',
      range: { start: { line: 4, character: 12 }, end: { line: 4, character: 40 }, from: 210, to: 238 },
      at: { x: 31.2, y: 18.7 },
      measure: { value: 0.42, limit: 0.8, unit: 'mm' },
      related: [
        {
          message: 'holds this island',
          at: { x: 1, y: 2 },
          range: { start: { line: 6, character: 2 }, end: { line: 6, character: 5 }, from: 300, to: 303 },
        },
      ],
      mends,
    });
  });

  it('gives the seconds that cutting takes where they are known', () => {
    const [layer] = file([]).layers;
    const [written] = JSON.parse(formatJson(input([file([], { layers: [{ ...layer!, cutTime: 185.20004 }] })]))).files;
    expect(written.layers[0].cutTime).toBe(185.2);
  });

  it('leaves out what a finding does not have', () => {
    const bare = finding({ layer: undefined, at: undefined, measure: undefined });
    const [written] = JSON.parse(formatJson(input([file([bare])]))).files[0].findings;
    expect(Object.keys(written)).toEqual(['check', 'severity', 'message', 'range', 'related', 'mends']);
  });

  it('gives the detail of a finding that has one', () => {
    const detail = 'Narrower bridges tear.';
    const [written] = JSON.parse(formatJson(input([file([finding({ detail })])]))).files[0].findings;
    expect(written.detail).toBe(detail);
  });

  it('gives the reasons why mends were refused, where there are any', () => {
    const refusals = [{ title: 'Bridge this island', reason: 'No place for a bridge was found.' }];
    const [written] = JSON.parse(formatJson(input([file([finding({ refusals })])]))).files[0].findings;
    expect(written.refusals).toEqual(refusals);
    expect(written.mends).toEqual([]);
  });

  it('a configuration file has no size', () => {
    const config = file([finding()], { path: 'tombolo.json', size: undefined, layers: [] });
    expect(JSON.parse(formatJson(input([config]))).files[0]).toMatchObject({ size: null, layers: [] });
  });

  it('no files give an empty list', () => {
    expect(JSON.parse(formatJson(input([])))).toEqual({
      version: 1,
      files: [],
      summary: { error: 0, warning: 0, info: 0 },
    });
  });
});
