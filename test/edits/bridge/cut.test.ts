import { describe, expect, it } from 'vitest';
import { changedRegion, stripsFor } from '../../../src/edits/bridge/cut';
import { difference } from '../../../src/geometry/boolean/index';
import { areaBetween, areaOfRegion, bridge, islandsOf, parsesElsewhere } from '../bridging';
import {
  awkward,
  DASHED_RING,
  dashes,
  drawings,
  instances,
  lines,
  outlines,
  sheets,
  svg,
  topGroups,
} from '../drawings';
import { judgeBridging } from '../judge';

describe('bridges in strokes', () => {
  it.each(Object.keys(lines))('%s', async (what) => {
    const text = lines[what] ?? '';
    const result = bridge(text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(result.lost).toBeGreaterThan(0.98 * result.expectedLoss);
    expect(areaOfRegion(difference(result.after.openings, result.before.openings))).toBeLessThan(result.allowance);
    const gone = difference(result.before.openings, result.after.openings);
    const allowed = changedRegion(result.before, stripsFor(result.before, result.bridges));
    expect(areaOfRegion(difference(gone, allowed))).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });
});

describe('bridges in dashes', () => {
  it.each(Object.keys(dashes))('%s', async (what) => {
    const text = dashes[what] ?? '';
    const { islands, refusals, faults } = judgeBridging(text);
    expect({ refusals, faults }).toEqual({ refusals: [], faults: [] });
    expect(islands).toBeGreaterThan(0);
    expect(await parsesElsewhere(bridge(text).text)).toBe(true);
  });
  it('square dots point along the line', () => {
    // The renderer turns the caps of a dash without length to the axes, so that it cannot judge this one.
    const result = bridge(svg(`${DASHED_RING} stroke-linecap="square" stroke-dasharray="0 3"/>`));
    expect(islandsOf(result.after)).toBe(0);
    const changed = changedRegion(result.before, stripsFor(result.before, result.bridges));
    const [old, now] = [result.before, result.after].map(({ openings }) => difference(openings, changed));
    expect(areaBetween(old ?? [], now ?? [])).toBeLessThan(result.allowance);
  });
  it('commands that no bridge touches are copied', () => {
    const dashed = '<path d="M10 10h40v40h-40zM20 20v20h20v-20z" stroke-dasharray="90 0" stroke="#000"/>';
    expect(bridge(svg(dashed)).text).toContain('M10 29.549v-19.549h40v19.549');
  });
  it('are left alone where a bridge only comes near', () => {
    const near = '<path d="M5 57h50" stroke="#000" stroke-dasharray="2 3"/>';
    expect(bridge(svg(`<path fill-rule="evenodd" d="M10 10H50V50H10zM20 20H40V40H20z"/>${near}`)).text).toContain(near);
  });
});

describe('bridges in sheets', () => {
  it.each(Object.keys(sheets))('%s', async (what) => {
    const text = sheets[what] ?? '';
    const result = bridge(text);
    expect(result.before.layer.reading).toBe('sheet');
    expect(islandsOf(result.before)).toBe(1);
    expect(islandsOf(result.after)).toBe(0);
    expect(result.error).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
    expect(result.edits.every(({ span }) => span.from === span.to)).toBe(true);
  });
});

describe('bridges in outlines', () => {
  it.each(Object.keys(outlines))('%s', async (what) => {
    const text = outlines[what] ?? '';
    const result = bridge(text);
    expect(result.before.layer.reading).toBe('outlines');
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(result.error).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });

  it('arcs that a mirrored outline brings along keep their course', () => {
    const circle = (radius: number) =>
      `<path d="M${30 - radius} 30A${radius} ${radius} 0 0 1 ${30 + radius} 30A${radius} ${radius} 0 0 1 ${30 - radius} 30Z"/>`;
    const result = bridge(
      svg(
        `<g fill="none" stroke="#000" stroke-width=".1">${circle(20)}<g transform="matrix(-1 0 0 1 60 0)">${circle(12)}</g></g>`,
      ),
    );
    expect(islandsOf(result.after)).toBe(0);
    expect(result.error).toBeLessThan(result.allowance);
  });
});

describe('bridges in instances', () => {
  it.each(Object.keys(instances))('%s', async (what) => {
    const text = instances[what] ?? '';
    const result = bridge(text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(areaOfRegion(difference(result.after.openings, result.before.openings))).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });
});

describe('bridges in groups that a use draws at the top', () => {
  it.each(Object.entries({ ...topGroups, ...instances }))('%s', (_, text) => {
    const { islands, refusals, faults } = judgeBridging(text);
    expect({ refusals, faults }).toEqual({ refusals: [], faults: [] });
    expect(islands).toBeGreaterThan(0);
  });
  it('other instances stay', () => {
    const one = '<use href="#a" x="30" y="30" fill="#123"/>';
    const two = '<use href="#a" x="4" y="4" fill="#123"/>';
    const text = svg(
      `<defs><g id="a"><path d="M0 0H20V20H14V6H6V20H0z"/></g></defs>${one}${two}` +
        '<path fill="#123" d="M4 20H24V26H4z"/>',
    );
    const { text: bridged } = bridge(text);
    expect(bridged).toContain(one);
    expect(bridged).not.toContain(two);
  });
});

describe('bridges in fills', () => {
  it.each(Object.keys(drawings))('%s', async (what) => {
    const text = drawings[what] ?? '';
    const result = bridge(text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(result.error).toBeLessThan(result.allowance);
    expect(Math.abs(result.lost - result.expectedLoss)).toBeLessThan(0.02 * result.expectedLoss);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });
});

describe('what is rewritten before it can be cut', () => {
  it.each(Object.keys(awkward))('%s', async (what) => {
    const text = awkward[what] ?? '';
    const result = bridge(text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(areaOfRegion(difference(result.after.openings, result.before.openings))).toBeLessThan(result.allowance);
    const gone = difference(result.before.openings, result.after.openings);
    const allowed = changedRegion(result.before, stripsFor(result.before, result.bridges));
    expect(areaOfRegion(difference(gone, allowed))).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
    expect(result.after.layer.paint).toBe(result.before.layer.paint);
  });
});
