import { expect, test } from 'vitest';
import { traceEllipse, tracePoints, traceRectangle } from '../../../src/drawing/outline/basic-shapes';
import { OutlineBuilder } from '../../../src/drawing/outline/outline-builder';
import { IDENTITY } from '../../../src/geometry/base/matrix';

const SPAN = { from: 3, to: 9 };
/** Of three points: begin and end of each number. */
const PLACES = Array.from({ length: 12 }, (_, index) => index);

function kinds(trace: (builder: OutlineBuilder) => void): string[] {
  const builder = new OutlineBuilder(IDENTITY);
  trace(builder);
  return builder
    .done()
    .map(({ curves, closed }) => `${curves.map(({ kind }) => kind[0]).join('')}${closed ? 'z' : ''}`);
}

test('rectangles are four lines, and four arcs where they are rounded', () => {
  const box = { x: 1, y: 2, width: 10, height: 8 };
  expect(kinds((builder) => traceRectangle({ ...box, radiusX: undefined, radiusY: undefined }, SPAN, builder))).toEqual(
    ['llllz'],
  );
  expect(kinds((builder) => traceRectangle({ ...box, radiusX: 2, radiusY: undefined }, SPAN, builder))).toEqual([
    'lalalalaz',
  ]);
  expect(kinds((builder) => traceRectangle({ ...box, radiusX: 9, radiusY: 9 }, SPAN, builder))).toEqual(['aaaaz']);
  expect(kinds((builder) => traceRectangle({ ...box, radiusX: 9, radiusY: 1 }, SPAN, builder))).toEqual(['alaalaz']);
  expect(kinds((builder) => traceRectangle({ ...box, width: NaN, radiusX: 0, radiusY: 0 }, SPAN, builder))).toEqual([]);
});

test('curves follow one another to the start', () => {
  const builder = new OutlineBuilder(IDENTITY);
  traceRectangle({ x: 0.1, y: 0.2, width: 0.7, height: 0.3, radiusX: 0.1, radiusY: 0.05 }, SPAN, builder);
  const curves = builder.done()[0]?.curves ?? [];
  curves.forEach((curve, index) => expect(curve.start).toEqual(curves.at(index - 1)?.end));
});

test('ellipses are four arcs, points are lines', () => {
  expect(kinds((builder) => traceEllipse(0, 0, 5, 3, SPAN, builder))).toEqual(['aaaaz']);
  expect(kinds((builder) => traceEllipse(0, 0, 5, 0, SPAN, builder))).toEqual([]);
  expect(kinds((builder) => tracePoints([0, 0, 1, 0, 1, 1], PLACES, false, builder))).toEqual(['ll']);
  expect(kinds((builder) => tracePoints([0, 0, 1, 0, 1, 1], PLACES, true, builder))).toEqual(['lllz']);
  expect(kinds((builder) => tracePoints([0, 0], PLACES, false, builder))).toEqual([]);
});
