/** When the colour of a pixel is sprayed. */
import { defined } from '../../base/defined';
import type { LabelMap } from '../raster';

export class Ranks {
  /** Labels, first sprayed first. */
  readonly order: readonly number[];
  private readonly ofLabel = new Int16Array(256).fill(-1);

  constructor(order: readonly number[]) {
    this.order = order;
    order.forEach((label, rank) => {
      this.ofLabel[label] = rank;
    });
  }

  /** Of a label: 0 for what is sprayed first; -1 for what is left unpainted. */
  of(label: number): number {
    return defined(this.ofLabel[label]);
  }

  /** 0 for what is sprayed first; -1 for what is left unpainted. */
  at({ labels }: LabelMap, pixel: number): number {
    return defined(this.ofLabel[defined(labels[pixel])]);
  }
}
