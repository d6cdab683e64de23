import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { checkProject } from '../../../src/engine/check/check-project';
import { findingsOf, sheetOf } from '../stencils';

const sheet = (width: number, body = '<path d="M20 20h9v9h-9z"/>') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="50mm" viewBox="0 0 ${width} 50">${body}</svg>`;

const mark = (x: number) => `<path data-tombolo-register="" d="M${x} 3h4v2h-4z"/>`;

/** The mismatches in a project of such files, by file. */
function mismatches(files: Readonly<Record<string, string>>): Record<string, string[]> {
  const layers = Object.keys(files).map((from) => ({ from, name: from.replace('.svg', ''), paint: undefined }));
  const { files: reports } = checkProject(new Map(Object.entries(files)), { config: { ...DEFAULT_CONFIG, layers } });
  return Object.fromEntries(
    [...reports].map(([name, { findings }]) => [
      name,
      findings.filter(({ check }) => check === 'frame-mismatch').map(({ message }) => message),
    ]),
  );
}

describe('frame-mismatch', () => {
  it('tells in its own file which sheet is of another size than the rest', () => {
    const found = mismatches({ 'sky.svg': sheet(80), 'hill.svg': sheet(80.5), 'bird.svg': sheet(80) });
    expect(found).toMatchObject({ 'sky.svg': [], 'bird.svg': [] });
    expect(found['hill.svg']).toHaveLength(1);
    expect(found['hill.svg']?.[0]).toMatch(
      /^Sheets differ in size by 0\.50 mm: "hill" 80\.5 × 50 mm, "sky" 80 × 50 mm\.$/,
    );
    expect(mismatches({ 'sky.svg': sheet(80), 'hill.svg': sheet(80.005) })).toEqual({ 'sky.svg': [], 'hill.svg': [] });
  });

  it('tells marks that a sheet lacks, has alone, or has elsewhere', () => {
    const group = (id: string, marks: string) => `<g id="${id}">${marks}<path d="M20 20h9v9h-9z"/></g>`;
    const found = (one: string, other: string) =>
      findingsOf('frame-mismatch', sheetOf(group('a', one) + group('b', other)));
    expect(found(mark(3), mark(3))).toEqual([]);
    expect(found('', '')).toEqual([]);
    expect(found(mark(3), '')).toMatchObject([{ layer: 'b', text: 'g', severity: 'error', related: ['g'] }]);
    expect(found('', mark(3))).toMatchObject([{ layer: 'a', text: 'g' }]);
    const [moved] = found(mark(3), mark(3.25));
    expect(moved).toMatchObject({ layer: 'b', text: 'path', measure: '0.25 mm' });
    expect(moved?.message).toMatch(/^Register mark 0\.25 mm off in "b" \(compared with "a"\)/);
  });
});
