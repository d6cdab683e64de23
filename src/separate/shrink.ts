/** Pictures at another number of pixels. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Picture } from './raster';

/** The picture at another width; each pixel is the mean of the area that it covers. Opaque pictures only. */
export function resized(picture: Picture, width: number): Picture {
  const height = Math.max(1, Math.round((picture.height * width) / picture.width));
  if (width === picture.width) return picture;
  return width < picture.width ? shrunk(picture, width, height) : enlarged(picture, width, height);
}

function shrunk(picture: Picture, width: number, height: number): Picture {
  const data = new Uint8ClampedArray(4 * width * height);
  const row = new Float32Array(3 * width);
  const tall = picture.height / height;
  for (let y = 0; y < height; y += 1) {
    row.fill(0);
    const [top, bottom] = [y * tall, Math.min(picture.height, (y + 1) * tall)];
    for (let from = Math.floor(top); from < bottom; from += 1) {
      const weight = Math.min(from + 1, bottom) - Math.max(from, top);
      if (weight > 0) addRow(picture, from, width, weight, row);
    }
    const area = (picture.width / width) * tall;
    for (let x = 0; x < width; x += 1) {
      const at = 4 * (y * width + x);
      data[at] = defined(row[3 * x]) / area;
      data[at + 1] = defined(row[3 * x + 1]) / area;
      data[at + 2] = defined(row[3 * x + 2]) / area;
      data[at + 3] = 255;
    }
  }
  return { width, height, data };
}

/** Adds what a row of the picture has in each pixel of the narrower row. */
function addRow({ width: from, data }: Picture, y: number, width: number, weight: number, into: Float32Array): void {
  checkpoint(from);
  const wide = from / width;
  const row = 4 * y * from;
  for (let x = 0, to = 0; x < width; x += 1, to += 3) {
    const start = x * wide;
    const end = Math.min(from, (x + 1) * wide);
    const [first, last] = [Math.floor(start), Math.ceil(end) - 1];
    // All of the pixels, less what of the first and of the last lies beside.
    let at = row + 4 * first;
    const before = start - first;
    const behind = last + 1 - end;
    let red = -before * defined(data[at]);
    let green = -before * defined(data[at + 1]);
    let blue = -before * defined(data[at + 2]);
    for (const stop = row + 4 * last; at <= stop; at += 4) {
      red += defined(data[at]);
      green += defined(data[at + 1]);
      blue += defined(data[at + 2]);
    }
    red -= behind * defined(data[at - 4]);
    green -= behind * defined(data[at - 3]);
    blue -= behind * defined(data[at - 2]);
    into[to] = defined(into[to]) + weight * red;
    into[to + 1] = defined(into[to + 1]) + weight * green;
    into[to + 2] = defined(into[to + 2]) + weight * blue;
  }
}

/** Bilinear, between the centres of pixels. */
function enlarged(picture: Picture, width: number, height: number): Picture {
  const data = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y += 1) {
    checkpoint(4 * width);
    const [top, down] = between(y, picture.height / height, picture.height);
    for (let x = 0; x < width; x += 1) {
      const [left, right] = between(x, picture.width / width, picture.width);
      const [x2, y2] = [Math.min(left + 1, picture.width - 1), Math.min(top + 1, picture.height - 1)];
      for (let channel = 0; channel < 4; channel += 1) {
        const value = (column: number, line: number): number =>
          defined(picture.data[4 * (line * picture.width + column) + channel]);
        const above = value(left, top) * (1 - right) + value(x2, top) * right;
        const below = value(left, y2) * (1 - right) + value(x2, y2) * right;
        data[4 * (y * width + x) + channel] = above * (1 - down) + below * down;
      }
    }
  }
  return { width, height, data };
}

/** The pixel before a place, and how far it is to the next one, 0..1. */
function between(place: number, step: number, count: number): [number, number] {
  const at = Math.max(0, Math.min(count - 1, (place + 0.5) * step - 0.5));
  return [Math.floor(at), at - Math.floor(at)];
}
