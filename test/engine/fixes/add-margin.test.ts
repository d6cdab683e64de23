import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';
import { fixesFor } from '../../../src/engine/fixes/index';
import { translation } from '../../../src/geometry/base/matrix';
import { areaOf } from '../../../src/geometry/boolean/index';
import { symmetricDifference } from '../../../src/geometry/polygon/diff';
import { transformRegion } from '../../../src/geometry/polygon/transform';
import type { Report } from '../../../src/report/report';
import { applyEdits } from '../../../src/text/text';
import { fixed, foundIn, project, sheet, square } from '../project-files';

const svg = (attributes: string, body: string) => `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;
const outcome = (report: Report) => {
  const finding = report.findings.find((each) => each.check === 'edge-opening')!;
  const { fixes, refusals } = fixesFor(report, finding);
  const isMargin = ({ kind }: { kind: string }) => kind.startsWith('add-margin');
  return { fix: fixes.find(isMargin), refusal: refusals.find(isMargin) };
};
const configured = (text: object) => ({ config: readConfig(JSON.stringify(text)).config });

const PER_MM = 4;

/** One shade for each pixel. */
function painted(text: string): { readonly width: number; readonly pixels: readonly number[] } {
  const width = Math.round(check(text).drawing.width * PER_MM);
  const { pixels } = new Resvg(text, { fitTo: { mode: 'width', value: width }, background: '#fff' }).render();
  const all = [...pixels];
  return { width, pixels: all.filter((_, i) => i % 4 === 0) };
}

/** Inside at all sides, at two: 0.3 mm are left where one unit is one millimetre. */
const INNER = '<path d="M0.3 20H30V40H0.3Z M70 20H99.7V40H70Z"/>';

describe('adding a margin', () => {
  it.each([
    [
      'a size in mm',
      'width="100mm" height="60mm" viewBox="0 0 100 60"',
      'width="102mm" height="62mm" viewBox="-1 -1 102 62"',
    ],
    [
      'another unit',
      "width='10cm' height='6cm' viewBox='0,0,100,60'",
      "width='10.2cm' height='6.2cm' viewBox='-1 -1 102 62'",
    ],
    ['an origin of its own', 'viewBox="-10 -5 120 70" width="120mm" height="70mm"', undefined],
    [
      'a size of ours',
      'viewBox="0 0 100 60" data-tombolo-width="100mm"',
      'viewBox="-1 -1 102 62" data-tombolo-width="102mm"',
    ],
  ])('to %s keeps the scale and all places', (_, attributes, written) => {
    const body = written === undefined ? '<path d="M-9.7 20H30V40H-9.7Z M70 20H109.7V40H70Z"/>' : INNER;
    const text = svg(attributes, body);
    const before = check(text);
    const { fix } = outcome(before);
    expect(fix).toMatchObject({ title: 'Add a margin of 1 mm', scope: 'file', preferred: true, safe: false });
    const after = applyEdits(text, fix!.edits);
    if (written !== undefined) expect(after).toBe(svg(written, body));
    const now = check(after);
    expect(now.findings.filter((each) => each.check === 'edge-opening')).toEqual([]);
    const moved = transformRegion(before.sheets[0]!.openings, translation(1, 1));
    expect(areaOf(symmetricDifference(moved, now.sheets[0]!.openings))).toBeLessThan(1e-3);
    expect(now.drawing.width).toBeCloseTo(before.drawing.width + 2, 6);
    expect(now.drawing.height).toBeCloseTo(before.drawing.height + 2, 6);
  });

  it('gives pixels a viewBox, and says no size that the author does not', () => {
    const text = svg('width="400" height="300"', '<path d="M1 80H100V160H1Z M300 80H399V160H300Z"/>');
    const { fix } = outcome(check(text));
    const after = applyEdits(text, fix!.edits);
    expect(after).toContain('width="407.5591" height="307.5591" viewBox="-3.7795 -3.7795 407.5591 307.5591"');
    expect(check(after).findings.map((each) => each.check)).toEqual(['unstated-size']);
  });

  it('takes in what the edge has cut off, and what lies near it then', () => {
    const text = svg(
      'width="100mm" height="60mm" viewBox="0 0 100 60"',
      '<circle cx="0" cy="30" r="8"/><circle cx="100" cy="30" r="5"/><rect x="-14" y="10" width="5" height="5"/>',
    );
    const { fix } = outcome(check(text));
    expect(fix?.title).toBe('Add a margin of 15 mm');
    const now = check(applyEdits(text, fix!.edits));
    expect(now.findings).toEqual([]);
    const areas = now.sheets[0]!.openings.map((opening) => areaOf(opening)).sort((a, b) => a - b);
    expect(areas[0]).toBeCloseTo(25, 3);
    expect(areas[1]).toBeCloseTo(25 * Math.PI, 1);
    expect(areas[2]).toBeCloseTo(64 * Math.PI, 1);
  });

  it('shows the same picture in its middle', () => {
    const text = svg('width="100mm" height="60mm" viewBox="0 0 100 60"', INNER);
    const { fix } = outcome(check(text));
    const [old, now] = [text, applyEdits(text, fix!.edits)].map(painted);
    const unlike = old!.pixels.filter((shade, i) => {
      const [x, y] = [i % old!.width, Math.floor(i / old!.width)];
      return Math.abs(shade - now!.pixels[(y + PER_MM) * now!.width + x + PER_MM]!) > 40;
    });
    expect(unlike).toEqual([]);
    expect(now!.width).toBe(old!.width + 2 * PER_MM);
  });

  it('says where the margin must be stated instead', () => {
    const { refusal } = outcome(
      check(svg('viewBox="0 0 100 60"', INNER), configured({ size: { width: '100mm' }, margin: '0.2mm' })),
    );
    expect(refusal?.first).toBe('Set "margin": "1.2mm" in tombolo.json.');
    const styled = svg('style="width:100mm;height:60mm" viewBox="0 0 100 60"', INNER);
    expect(outcome(check(styled)).refusal?.reason).toMatch(/A style sets the size/);
  });

  it('is refused where the bed does not take it', () => {
    const { refusal } = outcome(
      check(
        svg('width="100mm" height="60mm" viewBox="0 0 100 60"', INNER),
        configured({ cutter: { bed: ['101mm', '80mm'] } }),
      ),
    );
    expect(refusal?.reason).toMatch(/too large for the bed/);
  });

  it('is the same for all files of a stack, so that they stay in register', () => {
    const files = { 'a.svg': sheet(square(0.2, 5, 59.6)), 'b.svg': sheet(square(-2, 20, 15) + square(50, 20, 15)) };
    const layers = [{ from: 'a.svg' }, { from: 'b.svg' }];
    const report = project(files, layers).files.get('a.svg')!;
    const { fix } = outcome(report);
    expect(fix).toMatchObject({ title: 'Add a margin of 6 mm to all files of the stack', scope: 'stack' });
    const after = foundIn(project(fixed(files, 'a.svg', fix!), layers));
    expect(after.filter((each) => /edge-opening|frame-mismatch/.test(each))).toEqual([]);
  });
});
