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

  it('leaves them to the other checks where it is off', () => {
    const { config } = readConfig('{"checks": {"sliver": "off"}}');
    expect(checksIn(sheetOf(dots + island(0.2)), { config }).sort()).toEqual([
      'floating-island',
      'floating-island',
      'small-opening',
      'small-opening',
    ]);
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
