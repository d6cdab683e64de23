/** A hole that later layers paint over although bridges hold it: the bridges go, and it with them. */
import { describe, expect, it } from 'vitest';
import { bridgesOf } from '../../../../src/engine/fixes/standing-bridges';
import {
  bridgeAtOffset,
  check,
  cutAwayHeld,
  fixesFor,
  heldUnderPaint,
  titleOfHeld,
} from '../../../../src/engine/index';
import { areaOf } from '../../../../src/geometry/boolean/index';
import { isRefusal } from '../../../../src/report/refusal';
import type { Report } from '../../../../src/report/report';
import { applyEdits } from '../../../../src/text/text';

const stencil = (...layers: readonly [string, string][]) =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">\n' +
  layers.map(([id, body]) => `<g id="${id}">\n${body}\n</g>\n`).join('') +
  '</svg>';
const box = (x: number, y: number, width: number) => `<rect x="${x}" y="${y}" width="${width}" height="${width}"/>`;
const RING = '<path fill-rule="evenodd" d="M30 30h40v40h-40z M40 40h20v20h-20z"/>';
const CURVED =
  '<path fill-rule="evenodd" d="M30 50a20 20 0 1 0 40 0a20 20 0 1 0-40 0z M42 50a8 8 0 1 0 16 0a8 8 0 1 0-16 0z"/>';

const area = ({ sheets }: Report, layer = 0) => sheets[layer]!.openings.reduce((sum, each) => sum + areaOf(each), 0);

/** The first layer bridged, and then another sprayed over it. */
function bridgedUnder(body: string, later: string, kind = 'bridge-island'): string {
  const text = stencil(['Water', body]);
  const report = check(text);
  const island = report.findings.find((finding) => finding.check === 'floating-island')!;
  const fix = fixesFor(report, island).fixes.find((each) => each.kind === kind)!;
  return applyEdits(text, fix.edits).replace('</svg>', `<g id="Heron">\n${later}\n</g>\n</svg>`);
}

const heldIn = (report: Report, number = 0) => {
  const sheet = report.sheets[0]!;
  return heldUnderPaint(report, sheet, bridgesOf(report, sheet)[number]!);
};

describe('a hole that bridges hold under later paint', () => {
  it.each([
    ['a square ring', RING, box(38, 38, 24)],
    ['a round ring', CURVED, '<circle cx="50" cy="50" r="9"/>'],
  ])('is cut away with all of them, and nothing is left of either: %s', (_, body, later) => {
    const text = bridgedUnder(body, later);
    const report = check(text);
    const held = heldIn(report)!;
    expect(held.bridges.length).toBeGreaterThan(1);
    expect(titleOfHeld(held)).toBe(
      `Cut away these ${held.bridges.length} bridges and what hangs there: "Heron" is painted over it`,
    );
    // Whichever of them is pointed at.
    expect(heldIn(report, 1)?.bridges).toEqual(held.bridges);
    const fix = cutAwayHeld(report, report.sheets[0]!, held);
    if (isRefusal(fix)) throw new Error(fix.reason);
    const after = check(applyEdits(text, fix.edits));
    expect(after.findings.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual([]);
    expect(after.sheets[0]!.pieces).toHaveLength(1);
    const hole = body === RING ? 400 : Math.PI * 64;
    expect(area(after)).toBeCloseTo(area(check(stencil(['Water', body]))) + hole, 0);
    expect(area(after, 1)).toBe(area(report, 1));
  });

  it('is offered at a side of the bridge in the text', () => {
    const text = bridgedUnder(RING, box(38, 38, 24));
    const report = check(text);
    const offsets = [...text].flatMap((_, offset) => (bridgeAtOffset(report, offset) ? [offset] : []));
    expect(offsets.length).toBeGreaterThan(0);
    const { sheet, bridge } = bridgeAtOffset(report, offsets[0]!)!;
    expect(heldUnderPaint(report, sheet, bridge)?.bridges).toHaveLength(2);
  });

  it('is none where some of it is seen, or the paint is sprayed before', () => {
    expect(heldIn(check(bridgedUnder(RING, box(38, 38, 12))))).toBeUndefined();
    const before = bridgedUnder(RING, box(38, 38, 24)).replace(
      /(<g id="Water">.*?<\/g>\n)(<g id="Heron">.*?<\/g>\n)/s,
      '$2$1',
    );
    const report = check(before);
    const sheet = report.sheets[1]!;
    expect(sheet.layer.name).toBe('Water');
    expect(heldUnderPaint(report, sheet, bridgesOf(report, sheet)[0]!)).toBeUndefined();
  });
});
