/**
 * Lettering against open typefaces. Counters of each letter: computed from the outlines of DejaVu Sans 2.37, Liberation
 * Sans 1.07.4 and Noto Sans, which agree. Two open stencil faces, Saira Stencil One and Black Ops One (OFL-1.1), have
 * no counter at all.
 */
import { describe, expect, test } from 'vitest';
import { bridgeIslands, check } from '../../src/engine/index';
import { rasterIslands, rasterise } from './raster';
import { letterStencil, loadFace } from './typefaces';

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789'];
const ONE_COUNTER = new Set('ADOPQRabdegopq0469');
const TWO_COUNTERS = new Set('B8');

function counters(letter: string): number {
  if (TWO_COUNTERS.has(letter)) return 2;
  return ONE_COUNTER.has(letter) ? 1 : 0;
}

function islandsIn(svg: string): number {
  return check(svg).findings.filter((finding) => finding.check === 'floating-island').length;
}

describe.each(['dejavu-sans', 'noto-sans'])('%s', (name) => {
  const face = loadFace(name);

  test.each(LETTERS)('%s has as many islands as counters', (letter) => {
    expect(islandsIn(letterStencil(face, letter))).toBe(counters(letter));
  });

  test.each(LETTERS.filter((letter) => counters(letter) > 0))('%s has none once it is bridged', (letter) => {
    const { text, refusals } = bridgeIslands(check(letterStencil(face, letter)));
    expect(refusals).toEqual([]);
    expect(islandsIn(text)).toBe(0);
    expect(rasterIslands(rasterise(text, 800))).toEqual([]);
  });
});

describe.each(['saira-stencil-one', 'black-ops-one'])('%s, a stencil face', (name) => {
  const face = loadFace(name);

  test.each([...LETTERS, ...'&@#%$'])('%s has no island', (letter) => {
    expect(islandsIn(letterStencil(face, letter))).toBe(0);
  });
});
