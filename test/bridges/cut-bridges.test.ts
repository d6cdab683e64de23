import { describe, expect, test } from 'vitest';
import { changedBy, stripsFor } from '../../src/bridges/cut-bridges';
import { difference } from '../../src/geometry/polygons';
import { areaOfRegion, bridge, islandsOf, parsesElsewhere } from './bridging';
import { awkward, drawings, instances, lines, outlines, sheets } from './drawings';

describe('bridges in strokes', () => {
  test.each(Object.keys(lines))('%s', async (what) => {
    const text = lines[what] ?? '';
    const result = bridge(text);
    if (process.env.SHOW) console.log(result.text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(result.lost).toBeGreaterThan(0.98 * result.expectedLoss);
    expect(areaOfRegion(difference(result.after.openings, result.before.openings))).toBeLessThan(result.allowance);
    const gone = difference(result.before.openings, result.after.openings);
    expect(areaOfRegion(difference(gone, changedBy(result.before, stripsFor(result.before, result.bridges))))).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });
});

describe('bridges in sheets', () => {
  test.each(Object.keys(sheets))('%s', async (what) => {
    const text = sheets[what] ?? '';
    const result = bridge(text);
    if (process.env.SHOW) console.log(result.text);
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
  test.each(Object.keys(outlines))('%s', async (what) => {
    const text = outlines[what] ?? '';
    const result = bridge(text);
    if (process.env.SHOW) console.log(result.text);
    expect(result.before.layer.reading).toBe('outlines');
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(result.error).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });
});

describe('bridges in instances', () => {
  test.each(Object.keys(instances))('%s', async (what) => {
    const text = instances[what] ?? '';
    const result = bridge(text);
    if (process.env.SHOW) console.log(result.text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(areaOfRegion(difference(result.after.openings, result.before.openings))).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });
});

describe('bridges in fills', () => {
  test.each(Object.keys(drawings))('%s', async (what) => {
    const text = drawings[what] ?? '';
    const result = bridge(text);
    if (process.env.SHOW) console.log(result.text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(result.error).toBeLessThan(result.allowance);
    expect(Math.abs(result.lost - result.expectedLoss)).toBeLessThan(0.02 * result.expectedLoss);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
  });
});

describe('what is rewritten before it can be cut', () => {
  test.each(Object.keys(awkward))('%s', async (what) => {
    const text = awkward[what] ?? '';
    const result = bridge(text);
    if (process.env.SHOW) console.log(result.text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(islandsOf(result.after)).toBe(0);
    expect(areaOfRegion(difference(result.after.openings, result.before.openings))).toBeLessThan(result.allowance);
    const gone = difference(result.before.openings, result.after.openings);
    const allowed = changedBy(result.before, stripsFor(result.before, result.bridges));
    expect(areaOfRegion(difference(gone, allowed))).toBeLessThan(result.allowance);
    expect(await parsesElsewhere(result.text)).toBe(true);
    expect(bridge(result.text).edits).toEqual([]);
    expect(result.after.layer.paint).toBe(result.before.layer.paint);
  });
});
