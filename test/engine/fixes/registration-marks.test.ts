import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';
import { fixesFor } from '../../../src/engine/fixes/index';
import { addRegistrationMarks as added } from '../../../src/engine/fixes/kinds/register-stack';
import { areaOf } from '../../../src/geometry/boolean/index';
import type { Fix } from '../../../src/report/fix';
import type { Report } from '../../../src/report/report';
import { registrationMarks } from '../../../src/stack/registration-marks';
import { applyEdits } from '../../../src/text/text';
import { fixed, project, sheet, square } from '../project-files';
import { proven, reasonOf } from '../results';

const layers = [{ from: 'a.svg' }, { from: 'b.svg' }];
const roomy = { margin: '10mm' };
const addRegistrationMarks = (report: Report): Fix => {
  return proven(added(report));
};
const marksOf = ({ stack }: Report) =>
  stack.layers.map(({ sheet: { layer } }) =>
    registrationMarks(layer).map(({ centre }) => `${centre.x.toFixed(2)} ${centre.y.toFixed(2)}`),
  );

describe('register marks', () => {
  const files: Record<string, string> = { 'a.svg': sheet(square(10, 10, 20)), 'b.svg': sheet(square(25, 10, 20)) };
  const first = project(files, layers, undefined, roomy).files.get('a.svg') as Report;

  it('are cut in every sheet of the stack at the same places, in the margin', () => {
    const mend = addRegistrationMarks(first);
    expect(mend).toMatchObject({ kind: 'register-stack', others: [{ file: 'b.svg' }] });
    const after = project(fixed(files, 'a.svg', mend), layers, undefined, roomy).files.get('a.svg') as Report;
    const [a, b] = marksOf(after);
    expect(a).toHaveLength(3);
    expect(b).toEqual(a);
    for (const place of a ?? []) {
      const [x = 0, y = 0] = place.split(' ').map(Number);
      expect(x < 0 || x > 60 || y < 0 || y > 60).toBe(true);
    }
    expect(after.project?.report.files.get('b.svg')?.findings).toEqual([]);
    expect(after.findings).toEqual([]);
    // Two cross-hairs and an angle of arms of 5 mm, 0.9 mm wide.
    const added = areaOf(after.sheets[0]?.openings ?? []) - areaOf(first.sheets[0]?.openings ?? []);
    expect(added).toBeCloseTo(3 * (2 * 5 * 0.9 - 0.9 ** 2), 2);
  });

  it('of a single sheet are of no use', () => {
    expect(added(check(files['a.svg'] ?? ''))).toBeUndefined();
  });

  it('are given to each layer within one file, in its group', () => {
    const text = sheet(
      '<g id="sun">\n    <rect x="10" y="10" width="20" height="20"/>\n  </g>\n' +
        '  <g id="heron" fill="red"><rect x="25" y="10" width="20" height="20"/></g>\n',
    );
    const before = check(text, { config: readConfig(JSON.stringify(roomy)).config });
    const mend = addRegistrationMarks(before);
    const after = check(applyEdits(text, mend.edits), before.settings);
    expect(after.findings).toEqual([]);
    expect(marksOf(after).map(({ length }) => length)).toEqual([3, 3]);
    expect(after.sheets.map(({ layer }) => layer.paint)).toEqual(['#000000', '#ff0000']);
  });

  it('are lines where lines are cut', () => {
    const looks = 'fill="none" stroke="#000" stroke-width=".1"';
    const lines = (x: number) => sheet(`<rect x="${x}" y="10" width="20" height="20" ${looks}/>`);
    const drawn = { 'a.svg': lines(10), 'b.svg': lines(25) };
    const mend = addRegistrationMarks(project(drawn, layers, undefined, roomy).files.get('a.svg') as Report);
    const after = project(fixed(drawn, 'a.svg', mend), layers, undefined, roomy).files.get('a.svg') as Report;
    expect(after.sheets.map(({ layer, openings }) => [layer.reading, openings.length])).toEqual([['outlines', 4]]);
  });

  it('are not offered where an opening is in their way, where there is no margin', () => {
    expect(addRegistrationMarks(project(files, layers).files.get('a.svg') as Report).kind).toBe('register-stack');
    const full = { ...files, 'b.svg': sheet(square(2, 2, 50)) };
    expect(reasonOf(added(project(full, layers).files.get('a.svg') as Report))).toMatch(/^[A-Z].*\.$/);
  });

  it('mend a sheet that lacks those of the others', () => {
    const mend = addRegistrationMarks(first);
    const half = { ...fixed(files, 'a.svg', mend), 'b.svg': files['b.svg'] ?? '' };
    const odd = project(half, layers, undefined, roomy).files.get('b.svg') as Report;
    const mismatch = odd.findings.find(({ check: id }) => id === 'frame-mismatch');
    expect(mismatch).toBeDefined();
    const [offered] = mismatch ? fixesFor(odd, mismatch).fixes : [];
    expect(offered?.kind).toBe('register-stack');
    const after = project(fixed(half, 'b.svg', offered as Fix), layers, undefined, roomy);
    expect([...after.files.values()].flatMap(({ findings }) => findings)).toEqual([]);
  });
});

describe('register marks where the art reaches the corners', () => {
  const frame = '<path fill-rule="evenodd" d="M3 3H57V57H3zM4.4 4.4V55.6H55.6V4.4z"/>';
  const framed =
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">' +
    `<g id="fur">${square(20, 20, 20)}</g><g id="ink">${frame}</g></svg>`;
  const settings = (config: object) => ({ config: readConfig(JSON.stringify(config)).config });

  it('are refused, with what would do', () => {
    expect(added(check(framed))).toMatchObject({
      reason: 'The art leaves no free sheet in the corners for register marks.',
      first: 'Set "margin": "8mm" in tombolo.json first.',
    });
  });

  it('stand outside the art, as openings of their own, once there is a margin', () => {
    const report = check(framed, settings({ margin: '8mm' }));
    const mend = addRegistrationMarks(report);
    expect(mend.title).toBe('Add register marks to every sheet');
    const after = check(applyEdits(framed, mend.edits), report.settings);
    const counts = (each: Report) => each.sheets.map(({ openings }) => openings.length);
    expect(counts(after)).toEqual(counts(report).map((number) => number + 3));
    const [places, others] = after.sheets.map(({ layer }) => registrationMarks(layer).map(({ box }) => box));
    expect(others).toEqual(places);
    for (const { minX, minY, maxX, maxY } of places ?? []) {
      expect(maxX < 0 || maxY < 0 || minX > 60 || minY > 60).toBe(true);
    }
  });

  it('are smaller where that sets them free', () => {
    const tight = framed.replace(frame, '<path d="M4.8 4.8H55.2V55.2H4.8z"/>');
    const after = check(applyEdits(tight, addRegistrationMarks(check(tight)).edits));
    const sizes = after.sheets.map(({ layer }) => registrationMarks(layer).map(({ box }) => box.maxX - box.minX));
    for (const size of sizes.flat()) {
      expect(size).toBeLessThan(5);
      expect(size).toBeGreaterThanOrEqual(3);
    }
    expect(after.sheets.map(({ openings }) => openings.length)).toEqual([4, 4]);
  });
});
