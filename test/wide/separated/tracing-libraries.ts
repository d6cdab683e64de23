/**
 * Pictures, traced by general libraries: imagetracerjs 1.2 (Unlicense), of all colours at once, and the marching squares of
 * d3-contour 4 (ISC) for each colour by itself, with fit-curve 0.2 (MIT) for the curves. Both get the paints, and each pixel's
 * nearest one.
 */
import { contours } from 'd3-contour';
import fitCurve from 'fit-curve';
import imageTracer from 'imagetracerjs';
import { rgbOf } from '../../../src/separate/colour/hex';
import type { Picture } from '../../../src/separate/index';
import { nearestLabels } from '../../../src/separate/labels/nearest';

export interface Traced {
  /** One unit is one pixel of the picture. */
  readonly svg: string;
  /** Lines and curves, each counted in every layer that has it. */
  readonly nodes: number;
}

/** Pixels that curves may run beside borders, as ours may. */
const TOLERANCE = 0.5;

export function tracedByImageTracer(picture: Picture, paints: readonly string[]): Traced {
  const pal = paints.map((paint) => {
    const [r, g, b] = rgbOf(paint);
    return { r, g, b, a: 255 };
  });
  const options = {
    pal,
    colorquantcycles: 1,
    ltres: TOLERANCE,
    qtres: TOLERANCE,
    pathomit: 8,
    strokewidth: 0,
    roundcoords: 3,
  };
  const svg = imageTracer.imagedataToSVG(picture, options);
  return { svg, nodes: (svg.match(/ [LQ] /g) ?? []).length };
}

export function tracedByContours(picture: Picture, paints: readonly string[]): Traced {
  const { width, height, labels } = nearestLabels(picture, paints.map(rgbOf));
  const grid = contours().size([width, height]).smooth(true);
  let nodes = 0;
  const paths = paints.map((paint, label) => {
    const { coordinates } = grid.contour(
      Float64Array.from(labels, (each) => Number(each === label)),
      0.5,
    );
    const rings = coordinates.flat().map((ring) => {
      const curves = fitCurve(ring, TOLERANCE);
      nodes += curves.length;
      const [first] = ring;
      return `M${first}${curves.map(([, ...points]) => `C${points}`).join('')}Z`;
    });
    return `<path fill="${paint}" fill-rule="evenodd" d="${rings.join('')}"/>`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">${paths.join('')}</svg>`;
  return { svg, nodes };
}
