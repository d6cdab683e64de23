/** What a report is asked on about: fixes, bridges, order, pictures, files for the cutter. */
import { describe, expect, it, test } from 'vitest';
import {
  applyEdits,
  applyPlan,
  asTwoSheets,
  bridgeIslands,
  CHECKS,
  CUT_FORMATS,
  check,
  cutFile,
  cutFileName,
  cutStack,
  cuttingCautions,
  FORMATS,
  fixAll,
  fixesFor,
  formatReports,
  isStencil,
  jobFiles,
  MATERIALS,
  parseLength,
  pictureSvg,
  repeatPlan,
  type StencilReport,
  sprayOrder,
  svg,
  testStrip,
} from '../../src/library/index';
import { BURIED, COVERED, RING } from './made';

const ring = check(RING);
const copy = structuredClone(ring) as StencilReport;

describe('bridges', () => {
  it('are put in, at the width that is asked for', () => {
    const told: [number, number][] = [];
    const { text, bridges, plan, refusals } = bridgeIslands(ring, {
      width: '1.5mm',
      progress: (...now) => told.push(now),
    });
    expect([bridges, refusals]).toEqual([plan.bridges.length, []]);
    expect(plan.bridges.map(({ width }) => width)).toEqual(plan.bridges.map(() => 1.5));
    expect(check(text).findings).toEqual([]);
    expect(told).toEqual([
      [0, 1],
      [1, 1],
    ]);
  });

  it('of a plan are put into the next build, wherever it has gone as text', () => {
    const { plan } = bridgeIslands(ring);
    const kept = applyPlan(check(RING.replace('M10 10h40', 'M9 10h41')), JSON.parse(JSON.stringify(plan)));
    expect([kept.bridges, kept.unnamed]).toEqual([plan.bridges.length, 0]);
    expect(check(kept.text).counts.error).toBe(0);
    expect(() => applyPlan(ring, { version: 1, bridges: [{}] } as never)).toThrow('no plan of bridges');
    expect(() => applyPlan(check(BURIED), plan)).toThrow('another drawing');
  });

  it('of two sheets cover each other', () => {
    const { text, layers } = asTwoSheets(ring);
    expect(layers).toEqual(['ring']);
    expect(check(text).layers.length).toBe(2);
  });

  it('of an unknown layer are refused', () => {
    for (const ask of [bridgeIslands, asTwoSheets, cutStack, pictureSvg]) {
      expect(() => ask(ring, { layer: 'reeds' })).toThrow('No layer is called "reeds": there are "ring".');
    }
    expect(() => bridgeIslands(ring, { width: -5 })).toThrow(/-5 is no length/);
    expect(() => bridgeIslands(ring, { style: 'crooked' as never })).toThrow(/none of auto/);
  });
});

describe('fixes', () => {
  it('mend a finding, by itself or by its id', () => {
    const [island] = ring.findings;
    const { fixes } = fixesFor(ring, island!);
    const [best] = fixes;
    expect(check(applyEdits(RING, best!.edits)).findings).toEqual([]);
    expect(fixesFor(ring, island!.id).fixes.map(({ kind }) => kind)).toEqual(fixes.map(({ kind }) => kind));
    expect(structuredClone(best)).toEqual(best);
    expect(() => fixesFor(ring, 'ring.svg@0/sliver/0')).toThrow('no such finding');
    expect(() => applyEdits('', best!.edits)).toThrow('another text');
  });

  it('all together leave nothing that one of them mends', () => {
    const told: string[] = [];
    const { text, done } = fixAll(check(BURIED), { progress: (title) => told.push(title) });
    expect(done.map(({ title }) => title)).toEqual(told);
    expect(fixAll(check(text)).done).toEqual([]);
  });
});

test('the best order is told by names', () => {
  const { names, islands, after } = sprayOrder(check(COVERED));
  expect([names, islands, after]).toEqual([['under', 'over'], 1, 0]);
  expect(() => sprayOrder(ring, { lightOverDark: -1 })).toThrow(/no number/);
});

test('pictures are SVG at true size', () => {
  for (const look of ['print', 'sheet', 'sheets'] as const) {
    expect(pictureSvg(check(COVERED), { look })).toMatch(/^<svg [^>]*width="[\d.]+mm"/);
  }
  expect(pictureSvg(ring, { ground: '#f4efe4' })).toContain('#f4efe4');
  expect(() => pictureSvg(ring, { ground: 'beige' })).toThrow(/no colour/);
  expect(() => pictureSvg(ring, { opacity: 2 })).toThrow(/0 to 1/);
});

test('sheets are cut to each format, with the page for the wall', () => {
  const report = check(COVERED);
  const sheets = cutStack(report, { kerf: '0.1mm', labels: true });
  expect(sheets.map(cutFileName)).toEqual(['01-under', '02-over']);
  for (const format of CUT_FORMATS) expect(cutFile(sheets[0]!, format).length).toBeGreaterThan(300);
  expect(jobFiles(report, sheets, 'Marsh')['job.html']).toContain('Marsh');
  expect(cuttingCautions(report).join(' ')).toContain('unattended');
  expect(() => cutFile(sheets[0]!, 'plt' as never)).toThrow(/none of svg, pdf, dxf/);
  expect(() => repeatPlan(report, { axis: 'x' } as never)).toThrow(/"step"/);
  expect(cutStack(report, { holes: repeatPlan(report, { axis: 'x', step: '54mm' }).holes }).length).toBe(2);
  expect(check(testStrip()).size).toEqual({ width: 180, height: 38, stated: true });
});

test('reports are printed in every format', () => {
  for (const format of FORMATS) expect(formatReports([ring, check(COVERED)], format).length).toBeGreaterThan(50);
  expect(() => formatReports(ring, 'xml' as never)).toThrow(/none of text, json/);
  expect(() => formatReports('ring' as never)).toThrow(/check\(\)/);
  const log = JSON.parse(formatReports(ring, 'sarif', { folder: 'file:///marsh/' }));
  expect(log.runs[0].originalUriBaseIds.SRCROOT.uri).toBe('file:///marsh/');
});

test('a copy cannot be asked on, and says so', () => {
  const asks = [bridgeIslands, applyPlan, asTwoSheets, fixAll, sprayOrder, pictureSvg, cutStack, cuttingCautions];
  for (const ask of asks) expect(() => (ask as (report: unknown) => unknown)(copy)).toThrow(/this is a copy, or none/);
});

test('checks and materials are listed', () => {
  expect(CHECKS.map(({ id }) => id)).toContain('floating-island');
  expect(MATERIALS['card-0.3']?.sources.bridge).toMatch(/./);
  expect(parseLength('1in')).toBe(25.4);
  expect(() => parseLength('148')).toThrow(/no length/);
  expect(isStencil(RING)).toBe(false);
  expect(svg`<g/>`).toContain('data-tombolo-from="');
});
