/** The end of a loose tongue, bridged: proven by a check, and seen by the renderer. */
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { fixesFor } from '../../../src/engine/fixes/index';
import type { Report } from '../../../src/report/report';
import { applyEdits } from '../../../src/text/text';
import { HEADS } from '../../checks/loose-tongue/heads';
import { rasterise } from '../../outside/raster';

const PIXELS_PER_MM = 4;

function loose(report: Report) {
  const finding = report.findings.find((each) => each.check === 'loose-tongue');
  if (!finding) throw new Error('No loose tongue.');
  return finding;
}

/** mm² painted, as the renderer sees it. */
function painted(svg: string): number {
  const { coverage } = rasterise(svg, 120 * PIXELS_PER_MM);
  return coverage.reduce((sum, value) => sum + value / 255, 0) / PIXELS_PER_MM ** 2;
}

describe('Bridge the end of this tongue', () => {
  const { 'whisker of 0.5 by 20 mm': whisker, ...heads } = HEADS;

  it.each(Object.entries(heads))('holds a %s', (_, svg) => {
    const report = check(svg);
    const fix = fixesFor(report, loose(report)).fixes.find(({ kind }) => kind === 'tie-tongue');
    expect(fix?.title).toMatch(/^Bridge the end of this tongue \(1 bridge of [0-3]\.\d[05] mm\)$/);
    const text = applyEdits(svg, fix?.edits ?? []);
    expect(check(text).findings).toEqual([]);
    const [bridge] = fix?.bridges ?? [];
    const lost = painted(svg) - painted(text);
    const expected = (bridge?.length ?? 0) * (bridge?.width ?? 0);
    expect(lost).toBeGreaterThan(0.9 * expected);
    expect(lost).toBeLessThan(1.15 * expected + 0.5);
  });

  it('leaves a whisker to be widened', () => {
    const report = check(whisker);
    const { fixes } = fixesFor(report, loose(report));
    const widen = fixes.find(({ kind }) => kind === 'widen-bridge');
    expect(widen?.title).toBe('Widen to 0.80 mm');
    expect(check(applyEdits(whisker, widen?.edits ?? [])).findings).toEqual([]);
    expect(fixes.map(({ kind }) => kind)).not.toContain('tie-tongue');
  });

  it('says where no bank is near enough', () => {
    const path = 'M10 10H199V50H201V10H390V390H10Z';
    const svg = HEADS.lollipop.replaceAll('120', '400').replace(/ d="[^"]*"/, ` d="${path}"`);
    const report = check(svg);
    const { refusals } = fixesFor(report, loose(report));
    const reason = refusals.find(({ kind }) => kind === 'tie-tongue')?.reason;
    expect(reason).toBe('No straight bridge fits at the end of this tongue.');
  });
});
