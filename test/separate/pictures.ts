/** Small pictures for the tests of separation. */
import { Resvg } from '@resvg/resvg-js';
import type { Dials, Picture } from '../../src/separate/index';
import type { LabelMap, Rgb } from '../../src/separate/raster';

export const DIALS: Dials = {
  width: 148,
  colours: 4,
  paints: [],
  detail: 0.8,
  bridge: 0.8,
  opening: 0.6,
  slip: 0.5,
  leaveOut: [],
  outline: false,
};

/** Numbers from 0 to below 1, the same in every run. */
export function seeded(seed = 7): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** Four quarters of 40 × 40 pixels, each in a colour of its own. */
export function drawn(colours: readonly Rgb[], side = 80): Picture {
  return painted(side, side, (x, y) => colours[(x < side / 2 ? 0 : 1) + (y < side / 2 ? 0 : 2)]!);
}

/** A slope from dark to light with grain on it. */
export function noisy(side = 90): Picture {
  const random = seeded();
  return painted(side, side, (x, y) => {
    const grain = 60 * (random() - 0.5);
    const value = (base: number): number => Math.max(0, Math.min(255, Math.round(base + grain)));
    return [value(2 * x + 20), value(2 * y + 10), value(x + y)];
  });
}

export function painted(width: number, height: number, colourAt: (x: number, y: number) => Rgb): Picture {
  const data = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) data.set([...colourAt(x, y), 255], 4 * (y * width + x));
  }
  return { width, height, data };
}

/** SVG as pixels. */
export function rendered(svg: string, width: number, crisp = false): Picture {
  const text = crisp ? svg.replace('<svg ', '<svg shape-rendering="crispEdges" ') : svg;
  const image = new Resvg(text, { fitTo: { mode: 'width', value: width }, background: '#ffffff' }).render();
  return { width: image.width, height: image.height, data: new Uint8ClampedArray(image.pixels) };
}

/** Blots of a few labels: a coarse grid, each pixel by the nearest of random places. */
export function blots(width: number, height: number, labels: number, places: number, seed: number): LabelMap {
  const random = seeded(seed);
  const sites = Array.from({ length: places }, (_, i) => [random() * width, random() * height, i % labels] as const);
  const map = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let least = Infinity;
      for (const [u, v, label] of sites) {
        const squared = (u - x) ** 2 + (v - y) ** 2;
        if (squared >= least) continue;
        least = squared;
        map[y * width + x] = label;
      }
    }
  }
  return { width, height, labels: map };
}
