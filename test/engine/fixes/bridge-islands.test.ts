import { beforeAll, describe, expect, it } from 'vitest';
import { bridgeIslands, check } from '../../../src/engine/index';

const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;

/** Rings of one path, each with what it leaves inside: centre and radius of that. */
const rings = (islands: readonly (readonly [number, number, number])[]): string =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path fill-rule="evenodd" ' +
  `d="${islands.map(([x, y, r]) => circle(x, y, 8) + circle(x, y, r)).join('')}"/></svg>`;

const islandsLeft = (text: string): number =>
  check(text).sheets.flatMap(({ pieces }) => pieces.filter(({ island }) => island)).length;

describe('a layer with an island that there is no place for', () => {
  const text = rings([
    [15, 15, 5],
    [40, 15, 5],
    [30, 40, 0.2],
  ]);
  let outcome: ReturnType<typeof bridgeIslands>;
  beforeAll(() => {
    outcome = bridgeIslands(check(text));
  });

  it('has all its other islands bridged, though one path draws them all', () => {
    expect(outcome.bridges).toBe(4);
    expect(islandsLeft(text)).toBe(3);
    expect(islandsLeft(outcome.text)).toBe(1);
  });

  it('says which one is left, once', () => {
    expect(outcome.refusals.map(({ message }) => message)).toEqual([
      'Layer "stencil": No place for a bridge was found for the island at 30.0, 40.0 mm.',
    ]);
  });

  it('is left alone by a second run', () => {
    expect(bridgeIslands(check(outcome.text)).edits).toEqual([]);
  });
});
