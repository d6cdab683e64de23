/**
 * A thin plate by finite elements, to compare the sheet's own model with: rectangles of twelve unknowns (R. J. Melosh 1963,
 * O. C. Zienkiewicz and Y. K. Cheung 1964: the nonconforming "ACM" element) on a grid of any lines, banded Cholesky. It
 * shares nothing with the source: no beam, no triangles, no outlines.
 */

export interface Plate {
  /** The grid's lines, mm, ascending. */
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Whether there is material at a place. */
  readonly isSolid: (x: number, y: number) => boolean;
  /** Whether a node is clamped. */
  readonly isClamped: (x: number, y: number) => boolean;
  /** MPa */
  readonly load: number;
  /** N·mm: E t³ / 12, as ISO 5628 has it; a plate's is that by 1 − ν². */
  readonly stiffness: number;
  readonly poisson: number;
}

/** mm: the largest deflection of any node. */
export function largestDeflection(plate: Plate): number {
  return Math.max(...deflections(plate).values());
}

/** mm, by node number: row by row of x within each y… as numbered for the band. */
export function deflections({ x, y, isSolid, isClamped, load, stiffness, poisson }: Plate): Map<number, number> {
  const rigidity = stiffness / (1 - poisson ** 2);
  const [columns, rows] = [x.length, y.length];
  const node = (i: number, j: number) => i * rows + j;
  const cells: [number, number][] = [];
  for (let i = 0; i + 1 < columns; i += 1)
    for (let j = 0; j + 1 < rows; j += 1)
      if (isSolid((x[i]! + x[i + 1]!) / 2, (y[j]! + y[j + 1]!) / 2)) cells.push([i, j]);
  const free = new Map<number, number>();
  const corners = ([i, j]: [number, number]) => [
    [i, j],
    [i + 1, j],
    [i + 1, j + 1],
    [i, j + 1],
  ];
  const used = new Set(cells.flatMap((cell) => corners(cell).map(([i, j]) => node(i!, j!))));
  for (const each of [...used].sort((a, b) => a - b)) {
    if (!isClamped(x[Math.floor(each / rows)]!, y[each % rows]!)) free.set(each, free.size);
  }
  let band = 0;
  for (const cell of cells) {
    const own = corners(cell).flatMap(([i, j]) => free.get(node(i!, j!)) ?? []);
    band = Math.max(band, 3 * (Math.max(...own) - Math.min(...own)) + 3);
  }
  const size = 3 * free.size;
  const matrix = new Float64Array(size * band);
  const force = new Float64Array(size);
  const kept = new Map<string, Element>();
  for (const cell of cells) {
    const [i, j] = cell;
    const [a, b] = [x[i + 1]! - x[i]!, y[j + 1]! - y[j]!];
    const key = `${a.toFixed(9)} ${b.toFixed(9)}`;
    const element = kept.get(key) ?? elementOf(a, b, rigidity, poisson);
    kept.set(key, element);
    const places = corners(cell).flatMap(([p, q]) => {
      const place = free.get(node(p!, q!));
      return [0, 1, 2].map((k) => (place === undefined ? -1 : 3 * place + k));
    });
    for (let r = 0; r < 12; r += 1) {
      const row = places[r]!;
      if (row < 0) continue;
      force[row]! += load * element.load[r]!;
      for (let c = 0; c < 12; c += 1) {
        const column = places[c]!;
        if (column >= row && column >= 0) matrix[row * band + column - row]! += element.stiffness[r]![c]!;
      }
    }
  }
  solve(matrix, force, size, band);
  return new Map([...free].map(([each, place]) => [each, force[3 * place]!]));
}

interface Element {
  readonly stiffness: readonly (readonly number[])[];
  readonly load: readonly number[];
}

const POWERS = [
  [0, 0],
  [1, 0],
  [0, 1],
  [2, 0],
  [1, 1],
  [0, 2],
  [3, 0],
  [2, 1],
  [1, 2],
  [0, 3],
  [3, 1],
  [1, 3],
] as const;

/** The terms of the deflection, differentiated so many times by x and by y. */
function terms(x: number, y: number, byX: number, byY: number): number[] {
  const one = (value: number, power: number, times: number): number => {
    if (times > power) return 0;
    let factor = 1;
    for (let k = 0; k < times; k += 1) factor *= power - k;
    return factor * value ** (power - times);
  };
  return POWERS.map(([p, q]) => one(x, p, byX) * one(y, q, byY));
}

const GAUSS = [
  [(1 - Math.sqrt(0.6)) / 2, 5 / 18],
  [0.5, 8 / 18],
  [(1 + Math.sqrt(0.6)) / 2, 5 / 18],
] as const;

/** Unknowns at each corner: the deflection and its slopes by x and by y. */
function elementOf(a: number, b: number, rigidity: number, poisson: number): Element {
  const rows = [
    [0, 0],
    [a, 0],
    [a, b],
    [0, b],
  ].flatMap(([x, y]) => [terms(x!, y!, 0, 0), terms(x!, y!, 1, 0), terms(x!, y!, 0, 1)]);
  const inverse = invert(rows);
  const energy = Array.from({ length: 12 }, () => new Array<number>(12).fill(0));
  const loads = new Array<number>(12).fill(0);
  for (const [s, ws] of GAUSS) {
    for (const [t, wt] of GAUSS) {
      const weight = ws * wt * a * b;
      const [xx, yy, xy] = [terms(s * a, t * b, 2, 0), terms(s * a, t * b, 0, 2), terms(s * a, t * b, 1, 1)];
      const plain = terms(s * a, t * b, 0, 0);
      for (let r = 0; r < 12; r += 1) {
        loads[r]! += weight * plain[r]!;
        for (let c = 0; c < 12; c += 1) {
          energy[r]![c]! +=
            weight *
            rigidity *
            (xx[r]! * xx[c]! +
              yy[r]! * yy[c]! +
              poisson * (xx[r]! * yy[c]! + yy[r]! * xx[c]!) +
              2 * (1 - poisson) * xy[r]! * xy[c]!);
        }
      }
    }
  }
  const half = multiply(transpose(inverse), energy);
  return {
    stiffness: multiply(half, inverse),
    load: transpose(inverse).map((row) => row.reduce((sum, value, k) => sum + value * loads[k]!, 0)),
  };
}

function transpose(matrix: readonly (readonly number[])[]): number[][] {
  return matrix[0]!.map((_, c) => matrix.map((row) => row[c]!));
}

function multiply(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number[][] {
  const columns = transpose(b);
  return a.map((row) => columns.map((column) => row.reduce((sum, value, k) => sum + value * column[k]!, 0)));
}

/** By Gauss and Jordan, with pivots. */
function invert(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const work = matrix.map((row, r) => [...row, ...Array.from({ length: n }, (_, c) => (r === c ? 1 : 0))]);
  for (let c = 0; c < n; c += 1) {
    let pivot = c;
    for (let r = c + 1; r < n; r += 1) if (Math.abs(work[r]![c]!) > Math.abs(work[pivot]![c]!)) pivot = r;
    [work[c], work[pivot]] = [work[pivot]!, work[c]!];
    const factor = work[c]![c]!;
    work[c] = work[c]!.map((value) => value / factor);
    for (let r = 0; r < n; r += 1) {
      if (r === c) continue;
      const times = work[r]![c]!;
      if (times !== 0) work[r] = work[r]!.map((value, k) => value - times * work[c]![k]!);
    }
  }
  return work.map((row) => row.slice(n));
}

/** Cholesky's way for a symmetric matrix whose rows hold the diagonal and what follows it; the answer replaces `force`. */
function solve(matrix: Float64Array, force: Float64Array, size: number, band: number): void {
  for (let k = 0; k < size; k += 1) {
    const pivot = Math.sqrt(matrix[k * band]!);
    const end = Math.min(band, size - k);
    for (let j = 0; j < end; j += 1) matrix[k * band + j]! /= pivot;
    for (let i = 1; i < end; i += 1) {
      const factor = matrix[k * band + i]!;
      if (factor === 0) continue;
      for (let j = i; j < end; j += 1) matrix[(k + i) * band + j - i]! -= factor * matrix[k * band + j]!;
    }
  }
  for (let k = 0; k < size; k += 1) {
    force[k]! /= matrix[k * band]!;
    const end = Math.min(band, size - k);
    for (let i = 1; i < end; i += 1) force[k + i]! -= matrix[k * band + i]! * force[k]!;
  }
  for (let k = size - 1; k >= 0; k -= 1) {
    const end = Math.min(band, size - k);
    for (let i = 1; i < end; i += 1) force[k]! -= matrix[k * band + i]! * force[k + i]!;
    force[k]! /= matrix[k * band]!;
  }
}
