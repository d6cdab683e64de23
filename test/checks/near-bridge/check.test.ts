/** Sheets that are one painted region: what is judged on both together, and how near their bridges may come. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { check } from '../../../src/engine/index';

/** A square ring, and a disc in the middle, that is sprayed through two sheets, each with a bridge. @param x of the second's bridge, mm */
function ring(x: number, attribute = 'data-tombolo-with="ring"', paint = '#234'): string {
  const sheet = (at: number) =>
    `<path fill-rule="evenodd" d="M5 5H${at}V15H15V35H35V15H${at + 1}V5H45V45H5Z"/><circle cx="25" cy="25" r="3"/>`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50" data-tombolo-reading="openings">` +
    `<g id="ring" fill="#234">${sheet(20)}</g><g id="again" fill="${paint}" ${attribute}>${sheet(x)}</g></svg>`
  );
}

const BETWEEN_LAYERS = ['bare-gap', 'short-overlap', 'buried-opening', 'near-bridge'];

const found = (text: string, kerf = 0) =>
  check(text, { kerf, config: { ...DEFAULT_CONFIG, compensated: kerf === 0 } })
    .complete.filter(({ check: id }) => BETWEEN_LAYERS.includes(id))
    .map(({ check: id, measure }) => ({ id, value: measure?.value ?? 0 }));

describe('two sheets in one paint', () => {
  it('are one region for gaps, overlaps and covered openings', () => {
    expect(found(ring(28))).toEqual([]);
    expect(found(ring(28, '')).map(({ id }) => id)).toEqual(['buried-opening']);
  });

  it.each([
    [21.49, 0.49],
    [21.2, 0.2],
    [18.7, 0.3],
  ])('with a bridge at %s mm are told as nearer than the slip', (x, apart) => {
    const [near, ...others] = found(ring(x));
    expect(others).toEqual([]);
    expect(near?.id).toBe('near-bridge');
    expect(near?.value).toBeCloseTo(apart, 3);
  });

  it('may be as near as the slip, and the kerf where it is not allowed for', () => {
    expect(found(ring(21.51))).toEqual([]);
    expect(found(ring(21.65)).map(({ id }) => id)).toEqual([]);
    expect(found(ring(21.65), 0.2).map(({ id }) => id)).toContain('near-bridge');
    expect(found(ring(21.75), 0.2).map(({ id }) => id)).not.toContain('near-bridge');
  });

  it.each([
    ['no such layer', ring(28, 'data-tombolo-with="rink"')],
    ['a layer in another paint', ring(28, undefined, '#235')],
  ])('are not one where the second names %s', (_, text) => {
    const [told] = check(text).complete.filter(({ check: id }) => id === 'near-bridge');
    expect(told?.message).toMatch(/^No other layer in this paint is called/);
    expect(told?.layer).toBe('again');
  });
});
