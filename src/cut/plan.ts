/** The cuts in order, as plain data. */
import { defined } from '../base/defined';
import { DRAWN_ALIKE } from '../geometry/base/tolerances';
import { ringOfChain } from './chains';
import type { ContourKind, CutSheet } from './types';

/** One cut. Coordinates are mm on the page that is written: from its upper left corner, y down. */
export interface PlannedCut {
  /** From 1, in painting order. */
  readonly sheet: number;
  readonly kind: ContourKind;
  /** Points within 0.01 mm of the curve, from where the tool enters; the first is not repeated where it closes. */
  readonly contour: readonly (readonly [number, number])[];
  readonly closed: boolean;
  /** mm, of the curve itself. */
  readonly length: number;
}

export function planOf(sheets: readonly CutSheet[]): PlannedCut[] {
  return sheets.flatMap(({ number, contours }) =>
    contours.map(({ kind, curves, closed, length }) => {
      const ring = ringOfChain(curves, DRAWN_ALIKE);
      const contour = Array.from({ length: ring.length / 2 }, (_, i): [number, number] => [
        rounded(defined(ring[2 * i])),
        rounded(defined(ring[2 * i + 1])),
      ]);
      return { sheet: number, kind, contour, closed, length: rounded(length) };
    }),
  );
}

function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4 + 0;
}
