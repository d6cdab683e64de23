/** Bridging real drawings: icons and glyph outlines. The wide run does some thousands. */
import { describe, expect, it } from 'vitest';
import { type Bridged, bridge, islandsOf, parsesElsewhere } from './bridging';
import { glyphs, icons } from './corpus';

const SOME_ICONS = 150;

function expectBridged(result: Bridged): void {
  expect(islandsOf(result.after)).toBe(result.unbridged);
  expect(result.error).toBeLessThan(result.allowance);
  expect(Math.abs(result.lost - result.expectedLoss)).toBeLessThan(0.02 * result.expectedLoss + 1e-3);
}

describe('icons', () => {
  const some = icons().filter((_, index) => index % SOME_ICONS === 0);
  it.each(some)('$name', async ({ text }) => {
    const result = bridge(text);
    // Some icons are cut so large here that nothing but a bridge of over 20 mm would reach.
    expect(result.reasons.every((reason) => reason === 'too-far')).toBe(true);
    expectBridged(result);
    expect(await parsesElsewhere(result.text)).toBe(true);
  });
});

describe('glyphs', () => {
  const letters = [...glyphs('ABDRabeg048@&', '400'), ...glyphs('OQdo6%', '700', true)];
  it.each(letters)('$name', ({ text }) => {
    const result = bridge(text);
    expect(islandsOf(result.before)).toBeGreaterThan(0);
    expect(result.unbridged).toBe(0);
    expectBridged(result);
    expect(result.text).toContain('  <path id="glyph"');
  });
});
