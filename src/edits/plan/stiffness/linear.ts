/** Small systems of linear equations, by elimination with pivots. */
import { defined } from '../../../base/defined';

/** @param matrix square, not singular; is not changed */
export function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => Float64Array.from([...row, defined(right[i])]));
  eliminate(rows);
  return rows.map((row) => defined(row.at(-1)));
}

/** @param matrix square, not singular; is not changed */
export function inverseOf(matrix: readonly Float64Array[]): Float64Array[] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => {
    const wide = new Float64Array(2 * size);
    wide.set(row);
    wide[size + i] = 1;
    return wide;
  });
  eliminate(rows);
  return rows.map((row) => row.slice(size));
}

/** Until the left square is the identity (Gauss and Jordan). */
function eliminate(rows: Float64Array[]): void {
  for (let k = 0; k < rows.length; k += 1) {
    let pivot = k;
    for (let r = k + 1; r < rows.length; r += 1) {
      if (Math.abs(defined(rows[r]?.[k])) > Math.abs(defined(rows[pivot]?.[k]))) pivot = r;
    }
    const top = defined(rows[pivot]);
    [rows[pivot], rows[k]] = [defined(rows[k]), top];
    const head = defined(top[k]);
    for (let c = k; c < top.length; c += 1) top[c] = defined(top[c]) / head;
    for (const row of rows) {
      const factor = defined(row[k]);
      if (row === top || factor === 0) continue;
      for (let c = k; c < row.length; c += 1) row[c] = defined(row[c]) - factor * defined(top[c]);
    }
  }
}
