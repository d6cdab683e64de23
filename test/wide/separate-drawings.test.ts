/**
 * Drawings whose shapes are known, rendered to pixels and separated: how far the borders of the print lie from the true
 * ones, how many curves there are, and whether bare ground shows between neighbours; beside general libraries that trace pictures.
 */
import { describe, expect, it as test } from 'vitest';
import { layersAsSvg, type Picture, separate } from '../../src/separate/index';
import { DIALS, rendered } from '../separate/pictures';
import { BEHIND, bareIn, distance95, farthest, SCALE } from './separated/borders';
import { DRAWINGS } from './separated/known-drawings';
import { photoOf, photosAreThere } from './separated/pictures';
import { throughJpegJs, throughMozjpeg } from './separated/through-jpeg';
import { tracedByContours, tracedByImageTracer } from './separated/tracing-libraries';

/** Pixels of the picture, without JPEG. */
const NEAR = 0.4;
/** Through JPEG at quality 60, at the usual limits. */
const NEAR_COMPRESSED = 0.5;

const SIZE = 1000;

/**
 * Limits so far below the least detail that no tip is rounded off for what curves may take of a width: with the usual 0.8 mm the
 * duck's tips are, and it comes back within 0.5 pixels.
 */
const LIMITS = { bridge: 0.5, opening: 0.5 };

/** What nothing paints shows the ground behind. */
function printOf(svg: string, width: number): Picture {
  const ground = `<path fill="${BEHIND}" d="M0 0H${width}V${width}H0Z"/>`;
  return rendered(svg.replace(/<svg[^>]*>/, `$&${ground}`), SIZE * SCALE, true);
}

interface Judged {
  readonly nodes: number;
  readonly distance: number;
  readonly bare: number;
}

function judge(svg: string, width: number, nodes: number, truth: Picture): Judged {
  const print = printOf(svg, width);
  return { nodes, distance: distance95(print, truth), bare: bareIn(print) };
}

describe.each(DRAWINGS)('$name', ({ name, svg, colours, nodes, coarse }) => {
  const picture = rendered(svg, SIZE);
  const truth = rendered(svg, SIZE * SCALE, true);

  test(`comes back within ${NEAR} pixels, without bare ground, in few curves: fewer than general libraries take`, () => {
    const separation = separate(picture, { ...DIALS, ...LIMITS, colours });
    expect(separation.isDrawing).toBe(true);
    const own = judge(layersAsSvg(separation).text, DIALS.width, separation.nodes, truth);
    expect(own.nodes).toBeLessThanOrEqual(2 * nodes + 40);
    expect(own.bare).toBe(0);
    expect(own.distance).toBeLessThanOrEqual(NEAR);
    const paints = separation.layers.map(({ paint }) => paint);
    for (const [library, trace] of [
      ['imagetracerjs', tracedByImageTracer],
      ['d3-contour with fit-curve', tracedByContours],
    ] as const) {
      const traced = trace(picture, paints);
      const other = judge(traced.svg, SIZE, traced.nodes, truth);
      console.log(name, 'own', own, library, other);
      expect(own.nodes * 3).toBeLessThan(other.nodes);
      expect(own.distance).toBeLessThan(other.distance);
    }
  });

  test.each([
    { encoder: 'mozjpeg', through: throughMozjpeg, near: NEAR_COMPRESSED, dials: DIALS },
    { encoder: 'jpeg-js', through: throughJpegJs, near: coarse, dials: { ...DIALS, ...LIMITS } },
  ])('comes back within $near pixels through JPEG by $encoder', async ({ through, near, dials }) => {
    const separation = separate(await through(picture), { ...dials, colours });
    expect(separation.isDrawing).toBe(true);
    const own = judge(layersAsSvg(separation).text, DIALS.width, separation.nodes, truth);
    expect(own.bare).toBe(0);
    expect(own.distance).toBeLessThanOrEqual(near);
  });
});

/** Pixels of the picture. */
const SILHOUETTE = 1;

/** Limits of little more than a pixel: what is coarser cleans borders up by more than that. */
const FINE = { bridge: 0.5, opening: 0.5, detail: 0.5 };

// skimage's horse.png (CC0), in Debian's python3-skimage: black and white, without soft edges.
test.skipIf(!photosAreThere())(
  `a silhouette comes back whole, within ${SILHOUETTE} pixel of the edges of pixels`,
  () => {
    const picture = photoOf('horse.png');
    const { width, height } = picture;
    const separation = separate(picture, { ...DIALS, ...FINE, colours: 2 });
    const [dark, ...others] = separation.layers.filter(({ paint }) => paint === '#000000');
    expect([dark?.shapes.length, others]).toEqual([1, []]);
    const size = { width: SCALE * width, height: SCALE * height };
    const ground = `<path fill="${BEHIND}" d="M0 0H${DIALS.width}V${DIALS.width}H0Z"/>`;
    const print = rendered(layersAsSvg(separation).text.replace(/<svg[^>]*>/, `$&${ground}`), size.width, true);
    const pixels = new Uint8ClampedArray(4 * size.width * size.height);
    for (let at = 0; at < pixels.length / 4; at += 1) {
      const [x, y] = [Math.floor((at % size.width) / SCALE), Math.floor(at / size.width / SCALE)];
      pixels.set(picture.data.subarray(4 * (y * width + x), 4 * (y * width + x) + 4), 4 * at);
    }
    const off = farthest(print, { ...size, data: pixels });
    console.log('horse.png', off, separation.nodes);
    expect(off).toBeLessThanOrEqual(SILHOUETTE);
  },
);
