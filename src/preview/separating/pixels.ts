/** Pixels as the page shows them. */
import type { ShownPicture, ShownSeparation } from '../../protocol/separating';

/** Puts pixels on a canvas, which takes their size. */
export function drawPicture(canvas: HTMLCanvasElement, { width, height, data }: ShownPicture): void {
  canvas.width = width;
  canvas.height = height;
  const pixels = new ImageData(width, height);
  pixels.data.set(data);
  canvas.getContext('2d')?.putImageData(pixels, 0, 0);
}

/** A mask that lets through what is too fine, as a data address; empty where nothing is. */
export function maskOf({ width, height, data }: ShownSeparation['fine']): string {
  if (width === 0 || !data.includes(1)) return '';
  const pixels = new ImageData(width, height);
  data.forEach((value, at) => {
    pixels.data[4 * at + 3] = 255 * value;
  });
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.putImageData(pixels, 0, 0);
  return canvas.toDataURL();
}

/** The colour of a picture at a place, each 0..1: the middle one of the pixels round it, channel by channel. */
export function colourAt({ width, height, data }: ShownPicture, x: number, y: number): string {
  const [column, row] = [Math.floor(x * width), Math.floor(y * height)];
  const channels: number[][] = [[], [], []];
  for (let v = row - 1; v <= row + 1; v += 1) {
    for (let u = column - 1; u <= column + 1; u += 1) {
      if (u < 0 || v < 0 || u >= width || v >= height) continue;
      channels.forEach((values, channel) => void values.push(data[4 * (v * width + u) + channel] ?? 0));
    }
  }
  const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
  return `#${channels.map((values) => middle(values).toString(16).padStart(2, '0')).join('')}`;
}
