/** Fixes of openings that are too fine: proven by checking again, by what a renderer paints, and on mirrored twins. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { fixesFor } from '../../../src/engine/fixes/index';
import { boxOfPolygon } from '../../../src/geometry/boolean/index';
import type { ReportedFinding } from '../../../src/report/finding-id';
import type { Fix } from '../../../src/report/fix';
import { applyEdits } from '../../../src/text/text';
import { rasterise } from '../../outside/raster';

const SIZE = 60;
const stencil = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE}mm" height="${SIZE}mm" viewBox="0 0 ${SIZE} ${SIZE}">${body}</svg>`;

/** An otter's face: mouth, whiskers, dots, and eyes each with a light in it. */
const MOUTH =
  'M29.8 30 H30.2 V33 C31.5 34.2 34 34.6 36.4 33.4 L36.6 33.8 C34 35.2 31.3 34.8 30 33.5 ' +
  'C28.7 34.8 26 35.2 23.4 33.8 L23.6 33.4 C26 34.6 28.5 34.2 29.8 33 Z';
const EYE = (x: number) =>
  `<path fill-rule="evenodd" d="M${x} 16.5 a2.4 2.4 0 1 1 4.8 0 a2.4 2.4 0 1 1-4.8 0 Z M${x + 2.5} 15.6 a.8.8 0 1 0 1.6 0 a.8.8 0 1 0-1.6 0 Z"/>`;
const FACE = stencil(
  `${EYE(17)}${EYE(38)}<path d="${MOUTH}"/>` +
    '<path d="M39 28.4 L53 25.6 V26.1 L39 29.2 Z"/><path d="M21 28.4 L7 25.6 V26.1 L21 29.2 Z"/>' +
    '<circle cx="38" cy="40" r=".25"/><path d="M10 50 C20 46 30 54 40 50" fill="none" stroke="#000" stroke-width=".5"/>',
);

const isThin = ({ check: id }: ReportedFinding) => id === 'narrow-opening' || id === 'small-opening';

function thinIn(svg: string): ReportedFinding[] {
  return check(svg).complete.filter(isThin);
}

function fixesOf(svg: string, finding: ReportedFinding): readonly Fix[] {
  return fixesFor(check(svg), finding).fixes;
}

describe('what is too fine in a face', () => {
  const report = check(FACE);
  const thin = report.complete.filter(isThin);

  it('is found: two eyes, a mouth, two whiskers, a dot and a line', () => {
    expect(thin).toHaveLength(7);
  });

  it('can be widened, each by itself, and that is preferred to removing it', () => {
    for (const finding of thin) {
      const { fixes } = fixesFor(report, finding);
      expect(fixes.filter(({ preferred }) => preferred).map(({ kind }) => kind)).toEqual(['open-up']);
      const after = applyEdits(FACE, fixes[0]?.edits ?? []);
      expect(thinIn(after)).toHaveLength(thin.length - 1);
    }
  });

  it('changes nothing that a renderer paints farther than the limit from where it is', () => {
    const before = rasterise(FACE, 20 * SIZE);
    for (const finding of thin) {
      const { subject } = finding;
      if (subject?.kind !== 'thin') throw new Error('not thin');
      const opening = subject.sheet.openings[subject.part.polygon];
      const { minX, minY, maxX, maxY } = boxOfPolygon(opening ?? { outer: new Float64Array(), holes: [] });
      const after = rasterise(applyEdits(FACE, fixesFor(report, finding).fixes[0]?.edits ?? []), 20 * SIZE);
      let changed = 0;
      for (let i = 0; i < before.coverage.length; i += 1) {
        if (Math.abs((before.coverage[i] ?? 0) - (after.coverage[i] ?? 0)) < 128) continue;
        changed += 1;
        const [x, y] = [(i % before.width) / 20, Math.floor(i / before.width) / 20];
        const beside = Math.max(minX - x, x - maxX, minY - y, y - maxY);
        expect(beside).toBeLessThan(0.6);
      }
      expect(changed).toBeGreaterThan(0);
    }
  });

  it('keeps its curves, and what is not touched to the byte', () => {
    const mouth = thin.find(({ check: id, measure }) => id === 'small-opening' && (measure?.value ?? 0) > 0.55);
    const after = applyEdits(FACE, (mouth && fixesOf(FACE, mouth)[0]?.edits) ?? []);
    const data = /<path d="(M29\.[^"]*)"/.exec(after)?.[1] ?? '';
    expect(data).not.toBe(MOUTH);
    expect(data.length).toBeLessThan(2 * MOUTH.length);
    expect(data.replace(/[^A-Za-z]/g, '')).toMatch(/^MHVC+LC+LC+Z$/);
    expect(after.replace(data, MOUTH)).toBe(FACE);
  });

  it('a dot gets the radius, a line the width, an eye its light moved', () => {
    const texts = thin.map((finding) => applyEdits(FACE, fixesOf(FACE, finding)[0]?.edits ?? []));
    expect(texts.some((text) => text.includes('<circle cx="38" cy="40" r=".3"/>'))).toBe(true);
    expect(texts.some((text) => text.includes('stroke-width="0.6"'))).toBe(true);
    expect(texts.some((text) => text.includes('M19.3 15.8 a.8.8 0 1 0 1.6 0 a.8.8 0 1 0-1.6 0 Z'))).toBe(true);
  });
});

describe('a point', () => {
  const leaf = stencil('<path d="M10 30 C20 26 32 28 45 30 C32 32 20 34 10 30 Z"/>');

  it('becomes blunt, or shorter, and its curves stay curves', () => {
    for (const finding of thinIn(leaf)) {
      const fixes = fixesOf(leaf, finding).filter(({ kind }) => kind !== 'accept');
      expect(fixes.map(({ kind }) => kind)).toEqual(['open-up', 'shorten-tip']);
      for (const { edits } of fixes) {
        const after = applyEdits(leaf, edits);
        expect(thinIn(after).length).toBeLessThan(thinIn(leaf).length);
        expect(after.match(/C/g)?.length ?? 0).toBeLessThan(8);
      }
    }
  });
});

describe('mirrored and turned twins', () => {
  const within = (share: number, low: number, high: number) => Math.round(100 * (low + (high - low) * share)) / 100;

  const DRAWINGS: Readonly<Record<string, (a: number, b: number, c: number) => string>> = {
    'an eye with a light in it': (a, b) => {
      const [dx, dy] = [within(a, -0.9, 0.9), within(b, -0.9, 0.9)];
      return (
        '<path fill-rule="evenodd" d="M20 30a2.4 2.4 0 1 1 4.8 0a2.4 2.4 0 1 1-4.8 0Z' +
        `M${21.6 + dx} ${30 + dy}a.8.8 0 1 0 1.6 0a.8.8 0 1 0-1.6 0Z"/>`
      );
    },
    'a whisker': (a, b, c) =>
      `<path d="M10 30l${within(a, 12, 22)} ${within(b, -3, 3)}v.45l${-within(a, 11, 20)} ${within(c, 0.4, 2)}z"/>`,
    'a dot': (a) => `<circle cx="25" cy="30" r="${within(a, 0.1, 0.29)}"/>`,
    'a curved line': (a, b, c) =>
      `<path d="M20 30c6-${within(a, 1, 4)} 12 ${within(b, 1, 4)} 18 0l.1.5c-6 ${within(b, 2, 4)}-12-${within(c, 0, 2)}-18 0z"/>`,
    'two rooms with a slot between them': (a) =>
      `<path d="M15 12H25V${within(a, 19.7, 19.9)}H35V12H48V28H35V20.2H25V28H15Z"/>`,
  };
  const POSES = [`matrix(-1 0 0 1 ${SIZE} 0)`, `matrix(0 1 -1 0 ${SIZE} 0)`];

  it.each(Object.entries(DRAWINGS))('are offered the same: %s', (_, draw) => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, share, (a, b, c) => {
        const body = draw(a, b, c);
        const plain = offersIn(stencil(`<g>${body}</g>`));
        for (const pose of POSES) expect(offersIn(stencil(`<g transform="${pose}">${body}</g>`))).toEqual(plain);
      }),
      { numRuns: 4 },
    );
  });

  /** The kinds of fixes that are proven for each finding, with the width that it is about. */
  function offersIn(svg: string): string[] {
    const report = check(svg);
    const thin = report.complete.filter(isThin);
    return thin
      .map(
        (finding) => `${finding.measure?.value.toFixed(2)}: ${fixesFor(report, finding).fixes.map(({ kind }) => kind)}`,
      )
      .sort();
  }
});
