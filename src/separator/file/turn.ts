/** Pictures turned and mirrored as Exif says (Exif 2.32, tag 0x0112). */
import type { Picture } from '../../separate/index';

/** @param orientation 1 to 8: where the first row and the first column of the file belong; 1 where nothing is said */
export function turned(picture: Picture, orientation: number): Picture {
  if (!(orientation >= 2 && orientation <= 8)) return picture;
  const { width: fromWidth, height: fromHeight } = picture;
  const isOnSide = orientation >= 5;
  const [width, height] = isOnSide ? [fromHeight, fromWidth] : [fromWidth, fromHeight];
  const from = new Uint32Array(picture.data.slice().buffer);
  const to = new Uint32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [u, v] = isOnSide ? [y, x] : [x, y];
      const column = [2, 3, 7, 8].includes(orientation) ? fromWidth - 1 - u : u;
      const row = [3, 4, 6, 7].includes(orientation) ? fromHeight - 1 - v : v;
      to[y * width + x] = from[row * fromWidth + column] ?? 0;
    }
  }
  return { width, height, data: new Uint8ClampedArray(to.buffer) };
}
