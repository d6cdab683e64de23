/**
 * Our reading of a file beside a general renderer's (@resvg/resvg-js): both as pixels.
 * Our shapes are written out as plain polygons in sheet millimetres, so that of the renderer's own reading of SVG
 * nothing but the filling of polygons is used for them.
 */
import { Resvg } from '@resvg/resvg-js';
import type { Clip, Drawing, Shape, Subpath } from '../../src/drawing/types';
import type { Curve } from '../../src/geometry/base/curve-types';
import { pointAt } from '../../src/geometry/curve/index';

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, opacity of each pixel, 0..255, row by row. */
  readonly pixels: Uint8Array;
}

/** What the renderer makes of the file itself. Without fonts, so that text leaves no mark. */
export function renderText(svg: string, widthPixels: number): Picture {
  const fitTo = { mode: 'width', value: widthPixels } as const;
  const { width, height, pixels } = new Resvg(svg, { fitTo, font: { loadSystemFonts: false } }).render();
  return { width, height, pixels: new Uint8Array(pixels) };
}

/** What the renderer makes of our shapes. */
export function renderDrawing(drawing: Drawing, widthPixels: number): Picture {
  return renderText(writePolygons(drawing), widthPixels);
}

/** The drawing as an SVG of polygons, one user unit to the millimetre. */
export function writePolygons(drawing: Drawing): string {
  const { width, height, shapes } = drawing;
  const clips = new Map<Clip, string>();
  const body = shapes.map((shape) => writeShape(shape, clips)).join('\n');
  const defs = [...clips].map(([clip, id]) => writeClip(clip, id)).join('\n');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">` +
    `<defs>${defs}</defs>${body}</svg>`
  );
}

function writeShape(shape: Shape, clips: Map<Clip, string>): string {
  const colour = shape.paint.kind === 'none' ? 'none' : shape.paint.colour;
  let text =
    `<path d="${writeSubpaths(shape.subpaths)}" fill="${colour}" fill-rule="${shape.fillRule}" ` +
    `fill-opacity="${shape.opacity}"/>`;
  for (const clip of shape.clips) {
    let id = clips.get(clip);
    if (!id) clips.set(clip, (id = `clip${clips.size}`));
    text = `<g clip-path="url(#${id})">${text}</g>`;
  }
  return text;
}

function writeClip(clip: Clip, id: string): string {
  const parts = clip.parts.map((part) => `<path d="${writeSubpaths(part.subpaths)}" clip-rule="${part.fillRule}"/>`);
  return `<clipPath id="${id}">${parts.join('')}</clipPath>`;
}

function writeSubpaths(subpaths: readonly Subpath[]): string {
  return subpaths
    .map(({ curves }) => {
      const start = curves[0]?.start;
      if (!start) return '';
      return `M${start.x} ${start.y}${curves.map(writeCurve).join('')}Z`;
    })
    .join('');
}

/** Chords for a curve: at 270° and a radius of 100 pixels they stay within a two-hundredth of a pixel. */
const PIECES = 240;

function writeCurve(curve: Curve): string {
  if (curve.kind === 'line') return `L${curve.end.x} ${curve.end.y}`;
  if (curve.kind === 'cubic') {
    const { control1, control2, end } = curve;
    return `C${control1.x} ${control1.y} ${control2.x} ${control2.y} ${end.x} ${end.y}`;
  }
  let text = '';
  for (let index = 1; index <= PIECES; index += 1) {
    const { x, y } = pointAt(curve, index / PIECES);
    text += `L${x} ${y}`;
  }
  return text;
}

export interface Difference {
  /** Painted area as the file itself gives it, pixels (partial coverage counted by its share). */
  readonly painted: number;
  /** The same of our shapes. */
  readonly ours: number;
  /** Sum over all pixels of the difference in coverage, pixels. */
  readonly apart: number;
  /** Pixels for which the other picture has no like one, neither there nor next to it: no matter of edges. */
  readonly wrong: number;
}

/**
 * Coverage or colour may differ by this much, of 255, and count as alike: the renderer's own curves stray from the
 * true ones by up to a third of a pixel, and its coverage has sixteen steps.
 */
const ALIKE = 112;

export function compare(theirs: Picture, ours: Picture): Difference {
  if (Math.abs(theirs.width - ours.width) > 1 || Math.abs(theirs.height - ours.height) > 1) {
    throw new Error(`Sizes differ: ${theirs.width}×${theirs.height} and ${ours.width}×${ours.height}.`);
  }
  const width = Math.min(theirs.width, ours.width);
  const height = Math.min(theirs.height, ours.height);
  let [painted, own, apart, wrong] = [0, 0, 0, 0];
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const a = theirs.pixels[4 * (y * theirs.width + x) + 3] ?? 0;
      const b = ours.pixels[4 * (y * ours.width + x) + 3] ?? 0;
      painted += a / 255;
      own += b / 255;
      apart += Math.abs(a - b) / 255;
      if (pixelDistance(theirs, x, y, ours, x, y) <= ALIKE) continue;
      if (!hasAlike(theirs, x, y, ours) || !hasAlike(ours, x, y, theirs)) wrong += 1;
    }
  }
  return { painted, ours: own, apart, wrong };
}

function hasAlike(one: Picture, x: number, y: number, other: Picture): boolean {
  for (let dy = -1; dy <= 1; dy += 1) {
    for (let dx = -1; dx <= 1; dx += 1) {
      const [atX, atY] = [x + dx, y + dy];
      const inside = atX >= 0 && atY >= 0 && atX < other.width && atY < other.height;
      if (inside && pixelDistance(one, x, y, other, atX, atY) <= ALIKE) return true;
    }
  }
  return false;
}

/** The largest difference of a channel, colours weighed by how much they cover. */
function pixelDistance(a: Picture, ax: number, ay: number, b: Picture, bx: number, by: number): number {
  const [i, j] = [4 * (ay * a.width + ax), 4 * (by * b.width + bx)];
  const [coverA, coverB] = [(a.pixels[i + 3] ?? 0) / 255, (b.pixels[j + 3] ?? 0) / 255];
  let most = Math.abs(coverA - coverB) * 255;
  for (let channel = 0; channel < 3; channel += 1) {
    most = Math.max(most, Math.abs((a.pixels[i + channel] ?? 0) * coverA - (b.pixels[j + channel] ?? 0) * coverB));
  }
  return most;
}
