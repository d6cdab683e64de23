import { describe, expect, it } from 'vitest';
import { applyEdits, candidatesFor, check, type Fix, proveFix, readConfig } from '../../../src/engine/index';
import { layersAsSvg, separate } from '../../../src/separate/index';
import { lookedOver } from '../../../src/separator/project/bridged';
import { DIALS, painted } from '../../separate/pictures';

const SETTINGS = { config: readConfig('{ "size": { "width": "60mm" }, "margin": "10mm" }').config, budget: Infinity };

const drawing = (paths: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><g id="red" fill="#c03020">${paths}</g><g id="blue" fill="#2030c0"><path d="M40 40h8v8h-8z"/></g></svg>`;

/** Dark water with a lighter ring in it, that has dark water within. */
const POND = painted(120, 120, (x, y) => {
  const far = Math.hypot(x - 60, y - 60);
  return far > 15 && far < 40 ? [224, 144, 44] : [40, 70, 90];
});

const RING = '<path d="M10 10h30v20h-30zM20 15v10h10v-10z"/>';
const THIN = '<path d="M5 40h10v15h-10z"/><path d="M15.4 40h10v15h-10z"/>';

describe('a separated drawing', () => {
  it('is read as openings, that of a colour which reaches round the whole frame as well', () => {
    const { text } = layersAsSvg(separate(POND, { ...DIALS, width: 60, colours: 2 }));
    const { sheets, findings } = check(text, SETTINGS);
    expect(sheets.map(({ layer }) => layer.reading)).toEqual(['openings', 'openings']);
    expect(findings.map((finding) => finding.check)).toContain('floating-island');
    expect(lookedOver(text, SETTINGS, true)).toMatchObject({ islands: 0, left: [] });
  });
});

describe('sheets that are looked over', () => {
  it('get bridges, and what is too thin is mended', () => {
    const looked = lookedOver(drawing(RING + THIN), SETTINGS, true);
    expect(looked.bridges).toBeGreaterThan(0);
    expect(looked).toMatchObject({ islands: 0, findings: {}, left: [] });
  });

  it('name layers that are two sheets, which are one sheet more to cut', () => {
    const text = drawing(RING);
    expect(lookedOver(text, SETTINGS, true).twoSheets).toEqual([]);
    const report = check(text, SETTINGS);
    const island = report.findings.find((finding) => finding.check === 'floating-island')!;
    const doubled = proveFix(report, candidatesFor(report, island).find(({ kind }) => kind === 'two-sheets')!) as Fix;
    const two = applyEdits(text, doubled.edits);
    expect(lookedOver(two, SETTINGS, true)).toMatchObject({ islands: 0, twoSheets: ['red'] });
    expect(lookedOver(two, SETTINGS, false).twoSheets).toEqual(['red']);
  });

  it('show no ground between colours where one can reach under the other', () => {
    const looked = lookedOver(drawing('<path d="M29.8 38h10v12h-10z"/>'), SETTINGS, true);
    expect(looked).toMatchObject({ findings: {}, left: [] });
  });

  it('name each place that could not be mended', () => {
    const lines = '<path fill="none" stroke="#c03020" stroke-width="3" d="M5 40h20M5 43.4h20"/>';
    const { left, findings } = lookedOver(drawing(lines), SETTINGS, true);
    expect(findings['thin-bridge']).toBe(1);
    const at = { x: expect.any(Number), y: expect.closeTo(41.7, 1) };
    expect(left).toEqual([{ check: 'thin-bridge', layer: 'red', at, message: expect.stringContaining('0.40 mm') }]);
  });

  it('are left as they are where no bridges are asked for', () => {
    const text = drawing(RING + THIN);
    const looked = lookedOver(text, SETTINGS, false);
    expect(looked).toMatchObject({ text, islands: 1, left: [] });
    expect(looked.findings['thin-bridge']).toBe(1);
  });
});
