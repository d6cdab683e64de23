import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { describeShapeAt } from '../../../src/engine/queries/describe-shape';
import { outlineOf } from '../../../src/engine/queries/document-outline';
import { ring, sheet, square } from '../project-files';

const drawing = sheet(
  `<g id="sun">${square(30, 30, 8)}${ring(5, 5)}</g>` +
    '<g id="heron" fill="#3b4a54"><circle cx="30" cy="30" r="5"/></g>',
);

describe('the outline', () => {
  const [sun, heron] = outlineOf(check(drawing));
  const textOf = ({ from, to }: { from: number; to: number }) => drawing.slice(from, to);

  it('has the layers with their openings and pieces, measured', () => {
    // Square 8 mm; ring of 12 mm round 6 mm: areas 64, 144 − 36 and 36 mm², cuts 32 and 48 + 24 mm.
    expect([sun?.name, sun?.detail]).toEqual(['sun', '2 openings, 1 island, 104.0 mm of cut']);
    expect(sun?.children.map(({ name, detail }) => `${name}: ${detail}`)).toEqual([
      'Sheet 60.0 × 60.0 mm: 3392.0 mm²',
      'Island 6.0 × 6.0 mm: 36.0 mm², falls out',
      'Opening 12.0 × 12.0 mm: 108.0 mm², 72.0 mm of cut',
      'Opening 8.0 × 8.0 mm: 64.0 mm², 32.0 mm of cut',
    ]);
    expect(heron?.children.map(({ name, detail }) => `${name}: ${detail}`)).toEqual([
      'Sheet 60.0 × 60.0 mm: 3521.5 mm²',
      'Opening 10.0 × 10.0 mm: 78.5 mm², 31.4 mm of cut',
    ]);
  });

  it('leads to the text of each', () => {
    expect(textOf(sun!.span)).toMatch(/^<g id="sun">.*<\/g>$/);
    expect(textOf(sun!.selection)).toBe('g');
    expect(textOf(sun!.children[1]!.selection)).toMatch(/^h6v6h-6z?$/);
    expect(textOf(heron!.children[1]!.selection)).toContain('<circle');
  });

  it('stops at a length that can be read', () => {
    const dots = Array.from({ length: 620 }, (_, i) => square(1 + (i % 29) * 2, 1 + Math.floor(i / 29) * 2, 1));
    const many = sheet(dots.join(''));
    const [layer] = outlineOf(check(many));
    expect(layer?.children).toHaveLength(502);
    expect(layer?.children.at(-1)?.name).toBe('120 more');
  });

  it.each(['', '<svg', '<svg/>', 'hello'])('exists for %j', (text) => {
    for (const { name, span, selection } of outlineOf(check(text))) {
      expect(name).not.toBe('');
      expect(span.from <= selection.from && selection.to <= span.to).toBe(true);
    }
  });
});

describe('a shape', () => {
  const report = check(drawing);
  const at = (part: string) => describeShapeAt(report, drawing.indexOf(part));

  it('is described from anywhere in its start tag', () => {
    const circle = at('cx="30"');
    expect(circle).toMatchObject({ name: 'circle', times: 1, layers: [{ name: 'heron', paint: '#3b4a54' }] });
    expect((circle?.area ?? 0) / (25 * Math.PI)).toBeCloseTo(1, 3);
    expect((circle?.cutLength ?? 0) / (10 * Math.PI)).toBeCloseTo(1, 3);
    expect(at('<rect')).toMatchObject({ width: 8, height: 8, area: 64, cutLength: 32 });
  });

  it('is none where the text draws nothing', () => {
    expect(at('<g id="sun"')).toBeUndefined();
    expect(at('</g>')).toBeUndefined();
    expect(describeShapeAt(report, 1e9)).toBeUndefined();
  });

  it('drawn several times is measured as all of them', () => {
    const used = sheet(`<rect id="r" x="5" y="5" width="4" height="4"/><use href="#r" x="10"/><use href="#r" x="20"/>`);
    const three = describeShapeAt(check(used), used.indexOf('<rect'));
    expect(three).toMatchObject({ id: 'r', times: 3, width: 24, height: 4, area: 48, cutLength: 48 });
    expect(describeShapeAt(check(used), used.indexOf('<use'))).toMatchObject({ name: 'use', times: 1, area: 16 });
  });

  it('that is a cut line encloses its area', () => {
    const lines = sheet('<g fill="none" stroke="#000" stroke-width="0.1"><circle cx="30" cy="30" r="10"/></g>');
    const circle = describeShapeAt(check(lines), lines.indexOf('<circle'));
    expect(circle?.cutLength).toBeCloseTo(20 * Math.PI, 6);
    expect((circle?.area ?? 0) / (100 * Math.PI)).toBeCloseTo(1, 3);
  });
});
