/** What is said of islands that no bridge could be found for. */
import { describe, expect, it } from 'vitest';
import { bridgeIslands, check } from '../../../src/engine/index';

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
});
