/** How far pixels are from what is not of their label. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap } from '../raster';

export class NearestOther {
  private readonly map: LabelMap;
  private readonly reach: number;
  /** Steps within reach, the nearest first; of those as near row by row. */
  private readonly dx: Int32Array;
  private readonly dy: Int32Array;

  /** @param reach pixels; what is as far away as that is not looked at */
  constructor(map: LabelMap, reach: number) {
    this.map = map;
    this.reach = reach;
    const steps: [number, number][] = [];
    for (let y = -reach; y <= reach; y += 1) {
      for (let x = -reach; x <= reach; x += 1) if (x * x + y * y < reach * reach) steps.push([x, y]);
    }
    steps.sort(([x1, y1], [x2, y2]) => x1 * x1 + y1 * y1 - x2 * x2 - y2 * y2);
    this.dx = Int32Array.from(steps, ([x]) => x);
    this.dy = Int32Array.from(steps, ([, y]) => y);
  }

  /** The nearest pixel of another label, none where it is the frame, and how far away it is, in pixels. */
  of(at: number): { readonly distance: number; readonly pixel: number | undefined } {
    const { width, height, labels } = this.map;
    const x = at % width;
    const y = (at - x) / width;
    const label = labels[at];
    for (let i = 0; i < this.dx.length; i += 1) {
      const [u, v] = [defined(this.dx[i]), defined(this.dy[i])];
      const isInside = x + u >= 0 && x + u < width && y + v >= 0 && y + v < height;
      const other = at + v * width + u;
      if (isInside && labels[other] === label) continue;
      checkpoint(i >> 3);
      return { distance: Math.sqrt(u * u + v * v), pixel: isInside ? other : undefined };
    }
    return { distance: this.reach, pixel: undefined };
  }
}
