import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';
import { fixesFor } from '../../../src/engine/fixes/index';
import type { Fix } from '../../../src/report/fix';
import type { ProjectReport, Report } from '../../../src/report/report';
import { applyEdits } from '../../../src/text/text';
import { fixed, foundIn, project, sheet, square } from '../project-files';

const config = (text: object) => ({ config: readConfig(JSON.stringify(text)).config });
const mendOf = (report: Report, id: string): Fix | undefined => {
  const finding = report.findings.find((each) => each.check === id);
  expect(finding?.check).toBe(id);
  return finding && fixesFor(report, finding).fixes.find(({ kind }) => kind !== 'accept');
};
const measures = ({ drawing: { width, height }, sheets }: Report) =>
  [width, height, ...sheets.flatMap(({ openings }) => openings.flatMap(({ outer }) => [...outer]))].map((value) =>
    value.toFixed(3),
  );

describe('stating the size', () => {
  it.each([
    ['a viewBox alone', 'viewBox="0 0 300 200"', 'width="79.375mm" height="52.9167mm"'],
    [
      'pixels and a viewBox',
      'width="600px" height=\'400\' viewBox="0 0 300 200"',
      'width="158.75mm" height=\'105.8333mm\'',
    ],
    ['pixels alone', 'width="300" height="200"', 'width="79.375mm" height="52.9167mm"'],
    ['nothing at all', '', 'width="79.375mm" height="39.6875mm"'],
    ['one side of another ratio', 'height="100" viewBox="0 0 300 200"', 'height="26.4583mm" viewBox'],
  ])('of %s leaves every measure as it is', (_, attributes, written) => {
    const text = `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}><path d="M40 30H90V80H40Z"/></svg>`;
    const before = check(text);
    const mend = mendOf(before, 'unstated-size');
    expect(mend).toMatchObject({ safe: true, preferred: true });
    const after = applyEdits(text, mend?.edits ?? []);
    expect(after).toContain(written);
    expect(check(after).findings).toEqual([]);
    expect(measures(check(after))).toEqual(measures(before));
  });

  it('writes what tombolo.json says, with the art as large as it is read', () => {
    const text = '<svg xmlns="http://www.w3.org/2000/svg" width="300" height="200"><path d="M40 30H90V80H40Z"/></svg>';
    const settings = config({ size: { width: '90mm' } });
    const before = check(text, settings);
    const mend = mendOf(before, 'unstated-size');
    expect(mend).toMatchObject({ title: 'Write 90 × 60 mm into the file', safe: true });
    const after = applyEdits(text, mend?.edits ?? []);
    expect(after).toContain('width="90mm" height="60mm" viewBox="0 0 300 200"');
    for (const report of [check(after), check(after, settings)]) {
      expect(report.findings).toEqual([]);
      expect(measures(report)).toEqual(measures(before));
    }
  });

  it('takes a unit of the viewBox as a millimetre where nothing else is said', () => {
    const text = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60"><path d="M40 10H70V40H40Z"/></svg>';
    const before = check(text);
    const kinds = before.findings.flatMap((finding) => fixesFor(before, finding).fixes);
    const mend = kinds.find(({ kind }) => kind === 'state-size-in-units');
    expect(mend).toMatchObject({ title: 'Write 90 × 60 mm into the file (1 unit = 1 mm)', safe: false });
    const after = check(applyEdits(text, mend?.edits ?? []));
    expect(after.findings).toEqual([]);
    expect(measures(after).slice(0, 4)).toEqual(['90.000', '60.000', ...measures(after).slice(2, 4)]);
    expect(after.sheets[0]?.openings[0]?.outer).toContain(70);
    const stated = check(text.replace('viewBox', 'width="90" viewBox'));
    const others = stated.findings.flatMap((finding) => fixesFor(stated, finding).fixes.map(({ kind }) => kind));
    expect(others).not.toContain('state-size-in-units');
  });

  it('is not offered where a style would win over what is written', () => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" style="width: 300px; height: 200px">' +
      '<path d="M40 30H90V80H40Z"/></svg>';
    expect(mendOf(check(text), 'unstated-size')).toBeUndefined();
  });
});

describe('scaling to fit the bed', () => {
  // Sheet and bed of whole ratio: 60 × 60 mm with 2 mm of margin on 50 mm leave 46 mm.
  const bed = { cutter: { bed: ['50mm', '70mm'] }, margin: '2mm' };

  it('makes the artwork as large as the bed takes it', () => {
    const text = sheet(square(10, 10, 30));
    const mend = mendOf(check(text, config(bed)), 'oversize-sheet');
    expect(mend?.title).toBe('Scale to fit the bed: 46 × 46 mm (76.7 %)');
    const after = check(applyEdits(text, mend?.edits ?? []), config(bed));
    expect(after.findings).toEqual([]);
    const [opening] = after.sheets[0]?.openings ?? [];
    expect([...(opening?.outer ?? [])].map((value) => value.toFixed(2)).sort()).toEqual(
      [10, 10, 10, 10, 40, 40, 40, 40].map((value) => ((value * 46) / 60).toFixed(2)).sort(),
    );
  });

  it('adds a viewBox where there is none, so that the artwork follows', () => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm">' +
      '<circle cx="100" cy="100" r="50"/></svg>';
    const mend = mendOf(check(text, config(bed)), 'oversize-sheet');
    const after = check(applyEdits(text, mend?.edits ?? []), config(bed));
    expect(after.findings).toEqual([]);
    expect(after.sheets[0]?.cutLength).toBeCloseTo(2 * Math.PI * 50 * (25.4 / 96) * (46 / 60), 1);
  });

  it('is refused where a bridge would come out too thin', () => {
    // 0.9 mm between the squares come out as 0.69 mm, where 0.80 mm is the least.
    const offered = (side: number) =>
      mendOf(check(sheet(square(10, 10, side) + square(30, 10, 20)), config(bed)), 'oversize-sheet');
    expect(offered(19.1)).toBeUndefined();
    expect(offered(18.5)).toBeDefined();
  });

  it('is refused where tombolo.json states the size', () => {
    const stated = config({ ...bed, size: { width: '60mm' } });
    expect(mendOf(check(sheet(square(10, 10, 30)), stated), 'oversize-sheet')).toBeUndefined();
  });

  it('takes all files of a stack along', () => {
    const files = { 'a.svg': sheet(square(10, 10, 20)), 'b.svg': sheet(square(25, 10, 20)) };
    const layers = [{ from: 'a.svg' }, { from: 'b.svg' }];
    const first = project(files, layers, undefined, bed);
    const mend = mendOf(first.files.get('a.svg') as Report, 'oversize-sheet');
    expect(mend).toMatchObject({ kind: 'scale-stack', others: [{ file: 'b.svg' }] });
    const after = project(fixed(files, 'a.svg', mend as Fix), layers, undefined, bed);
    expect(sizes(after)).toEqual(['46.0 46.0', '46.0 46.0']);
    expect(foundIn(after).filter((found) => found.endsWith('oversize-sheet'))).toEqual([]);
  });
});

const sizes = ({ files }: ProjectReport): string[] =>
  [...files.values()].map(({ drawing: { width, height } }) => `${width.toFixed(1)} ${height.toFixed(1)}`);
