/** What is said of islands that no bridge could be found for. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { refusalForLeft } from '../../../src/engine/fixes/bridging/left';
import { bridgeIslands, check } from '../../../src/engine/index';
import type { Piece, Sheet } from '../../../src/sheet/types';

/** A ring of paint whose inner edge is an island's, 60 mm wide. */
const ring = (inner: string, name = ''): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60" data-tombolo-reading="openings">` +
  `<path ${name} fill-rule="evenodd" d="M5 5H55V55H5Z${inner}"/><path d="M57 57h1v1h-1z"/></svg>`;

const refusalsOf = (text: string): string[] => bridgeIslands(check(text)).refusals.map(({ message }) => message);

describe('an island that is left', () => {
  it('is told by its name and its place, with what would do', () => {
    const [told, ...others] = refusalsOf(ring('M30 30h0.5v0.5h-0.5z', 'id="eye"'));
    expect(others).toEqual([]);
    expect(told).toContain('the island "eye" at 30.3, 30.3 mm');
  });

  it('is tied from a point where its sides are too far from the sheet', () => {
    // A spike of the sheet reaches to within 15 mm of the island.
    const spiked = ring('M26 30L30 26L34 30L30 34Z').replace('H55V55H5Z', 'H28L30 11L32 5H55V55H5Z');
    const { bridges, refusals } = bridgeIslands(check(spiked));
    expect(refusals).toEqual([]);
    expect(bridges).toBeGreaterThan(0);
  });

  /** An island that is narrower than a bridge, near the edge. */
  const SMALL = ring('M30 7h0.7v0.7h-0.7z');
  /** One that comes near the edge with a spike alone, which is 0.4 mm wide and has a waist of 0.2 mm. */
  const WAISTED = ring('M26 30H29.8V15H29.9V12H29.8V6H30.2V12H30.1V15H30.2V30H34V34H26Z');

  it('is told of a narrower limit where bridges hold by that', () => {
    const [told] = refusalsOf(SMALL);
    expect(told).toMatch(/One of 0\.68 mm would hold: lower limits\.bridge/);
    const config = { ...DEFAULT_CONFIG, limits: { bridge: 0.68 } };
    expect(bridgeIslands(check(SMALL, { config })).refusals).toEqual([]);
  });

  it('is told of no limit where one fits that does not hold', () => {
    const [told, ...others] = refusalsOf(WAISTED);
    expect(others).toEqual([]);
    expect(told).toMatch(/^Layer "stencil": /);
    expect(told).not.toMatch(/would hold/);
  });

  it('is told to be narrower than a bridge where any bridge would come out too thin in it', () => {
    const report = check(SMALL);
    const [sheet] = report.sheets as [Sheet];
    const island = sheet.pieces.find((piece) => piece.island) as Piece;
    const tried = {
      reason: 'It would leave a bridge too thin to hold.',
      first: 'Widen the thin bridge in "eye" first.',
    };
    const { reason, first } = refusalForLeft(report, sheet, island, {}, tried);
    expect(reason).toBe('No bridge fits the island at 30.4, 7.3 mm, which is narrower than a bridge of 0.80 mm.');
    expect(first).toMatch(/^One of 0\.68 mm would hold/);
  });

  it('is told of a narrower limit after bridges that were found did not hold', () => {
    const report = check(SMALL);
    const [sheet] = report.sheets as [Sheet];
    const island = sheet.pieces.find((piece) => piece.island) as Piece;
    const { reason, first } = refusalForLeft(report, sheet, island, {}, { reason: 'It would leave a loose tongue.' });
    expect(reason).toContain('any bridge would leave a loose tongue.');
    expect(first).toMatch(/^One of 0\.68 mm would hold/);
  });
});
