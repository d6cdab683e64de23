/** Mends of a file of a project are proven together with its neighbours. */
import { describe, expect, it } from 'vitest';
import { verify } from '../../../src/engine/fixes/verify';
import type { Report } from '../../../src/report/report';
import { layerId } from '../../../src/sheet/layer/layer-id';
import type { TextEdit } from '../../../src/text/text';
import { project, ring, sheet, square } from '../project-files';
import { proven, reasonOf } from '../results';

const files = { 'a.svg': sheet(ring(40, 40) + square(5, 5, 20)), 'b.svg': sheet(square(24, 5, 20)) };
const layers = [{ from: 'a.svg' }, { from: 'b.svg' }];
const before = (name: keyof typeof files, of: Record<string, string> = files) =>
  project(of, layers).files.get(name) as Report;
const everywhere = {
  gone: [],
  within: new Map([
    [layerId('a.svg', 0), [everything()]],
    [layerId('b.svg', 0), [everything()]],
  ]),
};
const inB = { gone: [], within: new Map([[layerId('b.svg', 0), [everything()]]]) };

function everything() {
  return { outer: Float64Array.of(0, 0, 60, 0, 60, 60, 0, 60), holes: [] };
}

function replace(text: string, old: string, now: string): TextEdit[] {
  const from = text.indexOf(old);
  expect(from).toBeGreaterThanOrEqual(0);
  return [{ span: { from, to: from + old.length }, text: now }];
}

describe('the proof of a change in a project', () => {
  it('holds where the neighbours are as well off as before', () => {
    const proof = verify(before('b.svg'), replace(files['b.svg'], 'height="20"', 'height="21"'), everywhere);
    expect(proven(proof).after.project?.report.files.get('a.svg')?.text).toBe(files['a.svg']);
  });

  it('fails where bare ground comes between two files, whichever of them it is told in', () => {
    for (const x of ['25.2', '24.8']) {
      expect(reasonOf(verify(before('b.svg'), replace(files['b.svg'], 'x="24"', `x="${x}"`), everywhere))).toMatch(
        /^It would leave (?:bare ground between two colours|two colours with too little overlap)/,
      );
    }
  });

  it('lets a gap be that was there before, though it is told in the other file', () => {
    const gap = { ...files, 'b.svg': sheet(square(25.2, 5, 20)) };
    const edits = replace(gap['b.svg'], 'height="20"', 'height="21"');
    expect(reasonOf(verify(before('b.svg', gap), edits, everywhere))).toBeUndefined();
  });

  it('fails where the paint goes that closed the gap of two colours over it', () => {
    const over = { ...files, 'b.svg': sheet(square(5, 5, 20)), 'c.svg': sheet(square(25.3, 5, 20)) };
    const under = { 'u.svg': sheet(square(3, 3, 50)), ...over };
    const names = ['u.svg', 'b.svg', 'c.svg'];
    const report = project(
      under,
      names.map((from) => ({ from })),
    ).files.get('u.svg') as Report;
    const edits = replace(under['u.svg'], square(3, 3, 50), square(3, 30, 25));
    const within = new Map([[layerId('u.svg', 0), [everything()]]]);
    expect(reasonOf(verify(report, edits, { gone: [], within }))).toMatch(/^It would leave bare ground/);
  });

  it('fails where another file would change that was not to', () => {
    const others = [{ file: 'a.svg', edits: replace(files['a.svg'], 'y="5" width="20"', 'y="5" width="19.9"') }];
    expect(reasonOf(verify(before('b.svg'), [], inB, others))).toMatch(/of layer "a" would change elsewhere/);
    expect(reasonOf(verify(before('b.svg'), [], everywhere, others))).toBeUndefined();
  });

  it('measures all that is edited at the scale that is pledged', () => {
    const wide = { ...files, 'b.svg': sheet(square(21, 5, 20)) };
    const half = (text: string) => replace(text, 'width="60mm" height="60mm"', 'width="30mm" height="30mm"');
    const others = [{ file: 'a.svg', edits: half(files['a.svg']) }];
    const pledge = { gone: [], within: new Map(), scale: 0.5 };
    expect(reasonOf(verify(before('b.svg', wide), half(wide['b.svg']), pledge, others))).toBeUndefined();
    const less = { ...pledge, scale: 0.49 };
    expect(reasonOf(verify(before('b.svg', wide), half(wide['b.svg']), less, others))).toMatch(
      /would change elsewhere/,
    );
    expect(reasonOf(verify(before('b.svg', wide), half(wide['b.svg']), pledge))).toMatch(
      'It would leave sheets that cannot be laid in register.',
    );
  });
});
