import type { Matrix } from '../../geometry/base/curve-types';

/** For an SVG `transform` attribute; empty where nothing is moved. */
export function matrixText({ a, b, c, d, e, f }: Matrix): string {
  const still = a === 1 && b === 0 && c === 0 && d === 1 && e === 0 && f === 0;
  return still ? '' : `matrix(${a} ${b} ${c} ${d} ${e} ${f})`;
}
