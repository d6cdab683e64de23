/**
 * Root fillets as an independent renderer (@resvg/resvg-js) paints them: at a straight bank that is square to its bridge each of
 * the four takes (1 − π/4) r² of the opening, the square on a radius less a quarter of its disc (closed form), in the
 * corner, and nothing else changes.
 */
import { setImmediate } from 'node:timers/promises';
import { describe, expect, it as test } from 'vitest';
import { AUTO_STYLES, type BridgeRoots } from '../../src/config/bridge-style';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { bridgeIslands, check } from '../../src/engine/index';
import { paintedPixels, type Raster, rasterise } from './raster';

/** mm */
const SIDE = 60;
const PIXELS_PER_MM = 40;

const FRAME = '<path fill-rule="evenodd" d="M10 10H50V50H10zM20 20H40V40H20z"/>';
const RING =
  '<path fill-rule="evenodd" d="M30 10A20 20 0 1 1 30 50A20 20 0 1 1 30 10zM30 18A12 12 0 1 1 30 42A12 12 0 1 1 30 18z"/>';
const SLANTED = '<path fill-rule="evenodd" d="M10 10L50 16L46 50L8 44zM16 18L42 20L41 43L15 40z"/>';

const poses: Record<string, (drawn: string) => string> = {
  'as drawn': (drawn) => drawn,
  turned: (drawn) => `<g transform="rotate(90 30 30)">${drawn}</g>`,
  mirrored: (drawn) => `<g transform="matrix(-1 0 0 1 60 0)">${drawn}</g>`,
  'in other units': (drawn) =>
    `<svg viewBox="0 0 60 60" width="60" height="60"><g transform="scale(0.1)"><g transform="scale(10)">${drawn}</g></g></svg>`,
  'on a skewed grid': (drawn) => `<g transform="scale(0.5 1)"><g transform="scale(2 1)">${drawn}</g></g>`,
};

const sheet = (drawn: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}mm" height="${SIDE}mm" viewBox="0 0 ${SIDE} ${SIDE}">${drawn}</svg>`;

function bridged(text: string, roots: BridgeRoots) {
  const config = { ...DEFAULT_CONFIG, bridges: { ...AUTO_STYLES, roots } };
  return bridgeIslands(check(text, { config }), { bridgeWidth: 2 });
}

async function painted(text: string): Promise<Raster> {
  // The renderer's memory is freed only when the event loop turns.
  await setImmediate();
  return rasterise(text, SIDE * PIXELS_PER_MM);
}

/** Of 255: an edge that is written anew may lie 2 µm beside its place, and the renderer's own cubics for arcs as much: 0.16 pixels. */
const CHANGE = 64;

/** Places in mm of pixels that have less paint, and how many have more. */
function changes(before: Raster, after: Raster): { lost: [number, number][]; gained: number } {
  const lost: [number, number][] = [];
  let gained = 0;
  for (let i = 0; i < before.coverage.length; i += 1) {
    const by = (after.coverage[i] as number) - (before.coverage[i] as number);
    if (by > CHANGE) gained += 1;
    if (by < -CHANGE)
      lost.push([((i % before.width) + 0.5) / PIXELS_PER_MM, (Math.floor(i / before.width) + 0.5) / PIXELS_PER_MM]);
  }
  return { lost, gained };
}

/** The corners of a bridge, from its middle line: independent of where the surgery puts fillets. */
function cornersOf({ from, to, cutWidth }: { from: Point; to: Point; cutWidth: number }): Point[] {
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  const [x, y] = [((to.y - from.y) / size) * (cutWidth / 2), ((from.x - to.x) / size) * (cutWidth / 2)];
  return [from, to].flatMap((end) => [
    { x: end.x + x, y: end.y + y },
    { x: end.x - x, y: end.y - y },
  ]);
}

interface Point {
  readonly x: number;
  readonly y: number;
}

describe.each(Object.keys(poses))('rounded roots, %s', (pose) => {
  const posed = (drawn: string) => sheet(poses[pose]!(drawn));

  test('at straight banks take (1 − π/4) r² each', async () => {
    const [square, rounded] = [bridged(posed(FRAME), 'square'), bridged(posed(FRAME), 'rounded')];
    expect(rounded.bridges).toBe(2);
    const [before, after] = await Promise.all([painted(square.text), painted(rounded.text)]);
    const lost = (paintedPixels(before!) - paintedPixels(after!)) / PIXELS_PER_MM ** 2;
    // The strip is cut 2 µm wider than its bridge, so that rounding leaves it no narrower.
    const radius = 2.002 / 2;
    expect(lost / (8 * (1 - Math.PI / 4) * radius ** 2)).toBeCloseTo(1, 1);
    expect(Math.abs(lost - 8 * (1 - Math.PI / 4) * radius ** 2)).toBeLessThan(0.03);
  });

  test.each([
    ['a frame', FRAME, 1.5],
    ['a ring', RING, 1.7],
    ['a slanted frame', SLANTED, 2],
  ])('take paint in the corners of bridges in %s and nowhere else', async (_, drawn, reach) => {
    const [square, rounded] = [bridged(posed(drawn), 'square'), bridged(posed(drawn), 'rounded')];
    expect(rounded.plan.map(({ from, to }) => [from, to])).toEqual(square.plan.map(({ from, to }) => [from, to]));
    const { lost, gained } = changes(await painted(square.text), await painted(rounded.text));
    expect(gained).toBe(0);
    expect(lost.length).toBeGreaterThan(100);
    const corners = rounded.plan.flatMap(cornersOf);
    const away = lost.filter(([x, y]) => corners.every((corner) => Math.hypot(corner.x - x, corner.y - y) > reach));
    expect(away).toEqual([]);
    for (const corner of corners) {
      expect(lost.some(([x, y]) => Math.hypot(corner.x - x, corner.y - y) < reach)).toBe(true);
    }
  });
});
