/** What is put in place of stretches of a subpath; worked out by hand on a square of 10 units. */
import { describe, expect, it } from 'vitest';
import { splicePath } from '../../../../src/edits/opening/splice/splice-path';
import { pathSource } from '../../../../src/edits/path/path-source';
import { rewriteCommands } from '../../../../src/edits/path/rewrite-commands';
import type { Curve, Point } from '../../../../src/geometry/base/curve-types';
import { applyEdits } from '../../../../src/text/text';

const SQUARE = 'M0 0H10V10H0Z';

const lines = (...points: Point[]): Curve[] =>
  points.slice(1).map((end, i): Curve => ({ kind: 'line', start: points[i]!, end }));
const at = (x: number, y: number): Point => ({ x, y });

function spliced(data: string, splices: Parameters<typeof splicePath>[1]): string | undefined {
  const source = pathSource(data, { decimals: 2 }, true);
  const [path] = source.paths;
  const result = path && splicePath(path, splices);
  if (!result) return undefined;
  const starts = new Map<number, Point>();
  if (result.start && path.move !== undefined) starts.set(path.move, result.start);
  return applyEdits(data, rewriteCommands(source, { starts, curves: result.curves }));
}

describe('splicing a subpath', () => {
  it('replaces a stretch of one edge', () => {
    const course = lines(at(10, 2), at(12, 2), at(12, 8), at(10, 8));
    expect(spliced(SQUARE, [{ from: 1.2, to: 1.8, course }])).toBe('M0 0H10V2L12 2L12 8L10 8L10 10H0Z');
  });

  it('replaces whole edges and the corner between them', () => {
    const course = lines(at(5, 0), at(12, 0), at(12, 10), at(10, 10));
    expect(spliced(SQUARE, [{ from: 0.5, to: 2, course }])).toBe('M0 0H5L12 0L12 10L10 10H0Z');
  });

  it('replaces two stretches of one edge, in whichever order they are given', () => {
    const first = { from: 1.1, to: 1.2, course: lines(at(10, 1), at(11, 1.5), at(10, 2)) };
    const second = { from: 1.6, to: 1.7, course: lines(at(10, 6), at(11, 6.5), at(10, 7)) };
    const expected = 'M0 0H10V1L11 1.5L10 2L10 6L11 6.5L10 7L10 10H0Z';
    expect(spliced(SQUARE, [second, first])).toBe(expected);
  });

  it('begins elsewhere where the start is replaced', () => {
    const course = lines(at(0, 5), at(-1, -1), at(5, 0));
    expect(spliced(SQUARE, [{ from: 3.5, to: 0.5, course }])).toBe('M5 0H10V10H0L0 5L-1 -1Z');
  });

  it('refuses stretches that meet', () => {
    const course = lines(at(10, 2), at(12, 5), at(10, 8));
    expect(
      spliced(SQUARE, [
        { from: 1.2, to: 1.8, course },
        { from: 1.5, to: 2.5, course },
      ]),
    ).toBeUndefined();
  });
});
