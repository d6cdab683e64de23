import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';
import { fixesFor } from '../../../src/engine/fixes/index';
import { applyEdits } from '../../../src/text/text';
import { findingsOf, sheetOf } from '../stencils';

const specks = (svg: string, settings = {}) => findingsOf('sliver', svg, settings);
const checksIn = (svg: string, settings = {}) => check(svg, settings).findings.map((finding) => finding.check);

const FIELD = 'M10 10H90V90H10Z';
/** A square opening or hole, `side` mm a side. */
const square = (x: number, y: number, side: number) => `M${x} ${y}h${side}v${side}h${-side}Z`;
const island = (side: number) =>
  `<path fill-rule="evenodd" d="${FIELD} ${square(30, 30, side)} ${square(50, 60, side)}"/>`;
const square3 = `<path d="${square(30, 20, 0.1)} ${square(50, 60, 0.2)} ${square(70, 30, 0.15)}"/>`;
const dots = '<path d="M2 2h.2v.2h-.2Z"/><circle cx="5" cy="3" r="0.1"/>';

describe('sliver', () => {
  it('tells all of a layer once, with their number and area, and no other check tells of them', () => {
    const svg = sheetOf(`<g id="ink">${island(0.2)}</g><g id="mist">${dots}<path d="M20 2H40V8H20Z"/></g>`);
    expect(checksIn(svg)).toEqual(['sliver', 'sliver']);
    const [ink, mist] = specks(svg);
    expect(ink).toMatchObject({ layer: 'ink', severity: 'hint', measure: '0.08 mm²' });
    expect(ink?.message).toBe(
      '2 specks, 0.080 mm² in all, each under 0.05 mm² in "ink": too small to see. Remove them all.',
    );
    expect(mist).toMatchObject({ layer: 'mist', measure: '0.07 mm²' });
  });

  it('draws the line at 0.05 mm²', () => {
    expect(specks(sheetOf(island(0.223)))).toHaveLength(1);
    expect(checksIn(sheetOf(island(0.224)))).toEqual(['floating-island', 'floating-island']);
  });

  /** A slit of a spindle, 6 mm long, that only the ground within an opening fills. */
  const spindle = (wide: number, at = 'M30 40') =>
    `<path fill-rule="evenodd" d="${FIELD} ${at}q3 ${wide} 6 0q-3 ${-wide} -6 0Z"/>`;

  it('takes an island for one that is on average narrower than a cut, however long it is', () => {
    // Of a parabola two thirds count: 6 mm × 2/3 × 0.14 mm are 0.56 mm².
    const svg = sheetOf(spindle(0.14));
    expect(checksIn(svg)).toEqual(['sliver']);
    expect(specks(svg)[0]?.message).toBe(
      '1 speck, 0.56 mm² (under 0.10 mm wide) in "stencil": too small to see. Remove it.',
    );
    expect(checksIn(sheetOf(spindle(0.16)))).toEqual(['floating-island']);
    const both = sheetOf(`<g id="ink">${spindle(0.14)}</g><g id="mist">${dots}</g>`);
    expect(specks(both).map(({ severity }) => severity)).toEqual(['hint', 'hint']);
    expect(specks(sheetOf(spindle(0.14, `${square(30, 60, 0.2)} M30 40`)))[0]?.message).toBe(
      '2 specks, 0.60 mm² in all, each under 0.05 mm² or 0.10 mm wide in "stencil": too small to see. Remove them all.',
    );
  });

  it.each(['', 'scale(-1 1) translate(-100 0)', 'rotate(90 50 50)'])(
    'is told at the largest, wherever it is: %s',
    (turn) => {
      const svg = sheetOf(`<g id="stencil" transform="${turn}">${square3}</g>`);
      const [finding] = check(svg).findings;
      const inDrawing = {
        '': [50.1, 60.1],
        'scale(-1 1) translate(-100 0)': [49.9, 60.1],
        'rotate(90 50 50)': [39.9, 50.1],
      };
      const [x, y] = inDrawing[turn as ''];
      expect(finding?.at?.x).toBeCloseTo(x!, 2);
      expect(finding?.at?.y).toBeCloseTo(y!, 2);
    },
  );

  it('leaves them to the other checks where it is off', () => {
    const { config } = readConfig('{"checks": {"sliver": "off"}}');
    expect(checksIn(sheetOf(dots + island(0.2)), { config }).sort()).toEqual([
      'floating-island',
      'floating-island',
      'small-opening',
      'small-opening',
    ]);
  });

  describe('of hairlines', () => {
    /** Openings of 30 mm, so wide each. */
    const lines = (widths: readonly number[], x = 20) =>
      widths.map((width, i) => `<path d="M${x} ${10 + 10 * i}h30v${width}h-30Z"/>`).join('');

    it('tells them once for the layer, by the widest, and no other check tells of them', () => {
      const svg = sheetOf(lines([0.02, 0.04, 0.03]));
      expect(checksIn(svg)).toEqual(['sliver']);
      expect(specks(svg)).toMatchObject([{ severity: 'hint', measure: '0.04 mm' }]);
      expect(specks(svg)[0]?.message).toBe(
        '3 hairlines of up to 0.04 mm (minimum 0.60 mm) in "stencil": no paint gets through. Remove them all.',
      );
      expect(specks(svg)[0]?.related).toHaveLength(3);
    });

    it('draws the line at 0.05 mm as cut, however long they are', () => {
      expect(checksIn(sheetOf(lines([0.049])))).toEqual(['sliver']);
      expect(checksIn(sheetOf(lines([0.051])))).toEqual(['small-opening']);
      expect(checksIn(sheetOf(lines([0.04])), { kerf: 0.02 })).toEqual(['small-opening']);
    });

    it('is nowhere as wide: a line that ends in a dot is an opening with a slot', () => {
      const svg = sheetOf(`${lines([0.04])}<circle cx="20" cy="10.02" r="1"/>`);
      expect(checksIn(svg)).toEqual(['narrow-opening']);
    });

    it('are told and removed apart from specks', () => {
      const text = sheetOf(
        `<path fill="none" stroke="#000" stroke-width="0.04" d="M60 60H90"/>${lines([0.03])}${dots}`,
      );
      const report = check(text);
      expect(report.findings.map(({ subject }) => subject?.kind === 'specks' && subject.of)).toEqual([
        'speck',
        'hairline',
      ]);
      const fix = fixesFor(report, report.findings[1]!).fixes.find(({ kind }) => kind === 'remove-slivers');
      expect(fix).toMatchObject({ title: 'Remove all 2 hairlines in layer "stencil"', brings: [] });
      const after = applyEdits(text, fix!.edits);
      expect(specks(after).map(({ message }) => message)).toEqual([expect.stringMatching(/^2 specks/)]);
    });

    it('is told as a small opening where the check is off', () => {
      const { config } = readConfig('{"checks": {"sliver": "off"}}');
      expect(checksIn(sheetOf(lines([0.03])), { config })).toEqual(['small-opening']);
    });

    it('tells the same of a drawing turned by any angle', () => {
      for (const angle of [17, 45, 90, 133]) {
        const turned = sheetOf(`<g id="stencil" transform="rotate(${angle} 50 50)">${lines([0.02, 0.04], 35)}</g>`);
        expect(specks(turned)).toMatchObject([{ measure: '0.04 mm' }]);
        expect(checksIn(turned)).toEqual(['sliver']);
      }
    });
  });

  it('counts no register mark', () => {
    const mark = '<circle data-tombolo-register="dot" cx="5" cy="5" r="0.1"/>';
    expect(specks(sheetOf(mark + dots))[0]?.related).toHaveLength(2);
    expect(specks(sheetOf(mark))).toEqual([]);
  });

  it.each([
    ['holes of a path', `<g id="a">${island(0.2)}</g><g id="b"><path d="M2 94H8V98H2Z"/></g>`, 2],
    [
      'ground that shapes leave',
      '<rect x="10" y="10" width="80" height="20"/><rect x="10" y="30.2" width="80" height="20"/><rect x="10" y="29" width="20" height="3"/><rect x="30.2" y="29" width="59.8" height="3"/>',
      1,
    ],
    ['dots', dots + island(3).replaceAll('h3', 'h0.1').replaceAll('h-3', 'h-0.1').replaceAll('v3', 'v0.2'), 4],
  ])('removes them all: %s', (_, body, many) => {
    const text = sheetOf(body);
    const report = check(text);
    const finding = report.findings.find((each) => each.check === 'sliver')!;
    const fix = fixesFor(report, finding).fixes.find(({ kind }) => kind === 'remove-slivers');
    expect(fix).toMatchObject({ scope: 'layer', safe: false, brings: [] });
    expect(fix?.title).toMatch(many === 1 ? /^Remove the speck in/ : new RegExp(`^Remove all ${many} specks in`));
    const after = applyEdits(text, fix!.edits);
    expect(checksIn(after).filter((id) => ['sliver', 'floating-island', 'small-opening'].includes(id))).toEqual([]);
    expect(unlikePixels(text, after)).toBeLessThanOrEqual(4 * many);
  });
});

/** At 10 pixels to a mm: a speck is 5 of them. */
function unlikePixels(one: string, other: string): number {
  const [a, b] = [one, other].map((text) => {
    const { pixels } = new Resvg(text, { fitTo: { mode: 'width', value: 1000 }, background: '#fff' }).render();
    return pixels;
  });
  let unlike = 0;
  for (let i = 0; i < a!.length; i += 4) if (Math.abs(a![i]! - b![i]!) > 128) unlike += 1;
  return unlike;
}
