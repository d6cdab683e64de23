/** Whether a sheet can be laid on a cutter's bed. */

export type Fit = 'upright' | 'turned' | 'not';

/**
 * A rectangle p × q in a rectangle a × b, in any one unit: upright (quarter turns included), only when turned by some
 * other angle, or not at all. J. E. Wetzel, "Rectangles in rectangles", Mathematics Magazine (JSTOR 2691523), after
 * Carver.
 */
export function fitOf(sheet: readonly [number, number], bed: readonly [number, number]): Fit {
  const [p, q] = longerFirst(sheet);
  const [a, b] = longerFirst(bed);
  if (p <= a && q <= b) return 'upright';
  if (q > b || p <= a) return 'not';
  const diagonal = p * p + q * q;
  const needed = (2 * p * q * a + (p * p - q * q) * Math.sqrt(diagonal - a * a)) / diagonal;
  return b >= needed ? 'turned' : 'not';
}

function longerFirst([a, b]: readonly [number, number]): readonly [number, number] {
  return a >= b ? [a, b] : [b, a];
}
