import { expect, test } from 'vitest';
import { OutlineBuilder } from '../../../src/drawing/outline/outline-builder';
import { IDENTITY } from '../../../src/geometry/base/matrix';

test('a closing line is added where it has length', () => {
  const builder = new OutlineBuilder(IDENTITY);
  builder.moveTo(0, 0);
  builder.setPlace(1, 3);
  builder.lineTo(1, 0);
  builder.setPlace(5, 8);
  builder.close();
  const [subpath] = builder.done();
  expect(subpath?.closed).toBe(true);
  expect(subpath?.curves.map(({ end }) => [end.x, end.y])).toEqual([
    [1, 0],
    [0, 0],
  ]);
  expect(subpath?.spans).toEqual([
    { from: 1, to: 3 },
    { from: 5, to: 8 },
  ]);
});

test('a gap of rounding is closed by moving the last end', () => {
  const builder = new OutlineBuilder(IDENTITY);
  builder.moveTo(0, 0);
  builder.lineTo(1, 0);
  builder.lineTo(1e-13, 1e-13);
  builder.close();
  const [subpath] = builder.done();
  expect(subpath?.curves.length).toBe(2);
  expect(subpath?.curves.at(-1)?.end).toEqual({ x: 0, y: 0 });
});

test('curves without finite coordinates are left out', () => {
  const builder = new OutlineBuilder({ ...IDENTITY, a: 1e308 });
  builder.moveTo(0, 0);
  builder.lineTo(1e10, 0);
  builder.lineTo(0, 5);
  expect(builder.done()[0]?.curves.map(({ end }) => end)).toEqual([{ x: 0, y: 5 }]);
});

test('every kind of curve is mapped', () => {
  const builder = new OutlineBuilder({ a: 0, b: 2, c: -2, d: 0, e: 10, f: 0 });
  builder.moveTo(0, 0);
  builder.quadraticTo(1, 0, 1, 1);
  builder.cubicTo(1, 2, 2, 2, 2, 1);
  builder.setAxes({ x: 1, y: 0 }, { x: 0, y: 1 });
  builder.setCentre(1, 1);
  builder.arcTo(1, 2, 0, Math.PI / 2);
  expect(builder.done()[0]?.curves).toEqual([
    { kind: 'quadratic', start: { x: 10, y: 0 }, control: { x: 10, y: 2 }, end: { x: 8, y: 2 } },
    { kind: 'cubic', start: { x: 8, y: 2 }, control1: { x: 6, y: 2 }, control2: { x: 6, y: 4 }, end: { x: 8, y: 4 } },
    {
      kind: 'arc',
      start: { x: 8, y: 4 },
      end: { x: 6, y: 2 },
      centre: { x: 8, y: 2 },
      axisU: { x: 0, y: 2 },
      axisV: { x: -2, y: 0 },
      from: 0,
      sweep: Math.PI / 2,
    },
  ]);
});

test('places that come back are told apart', () => {
  const builder = new OutlineBuilder(IDENTITY);
  builder.moveTo(0, 0);
  for (const [index, from] of [1, 1, 1, 4, 1].entries()) {
    builder.setPlace(from, from + 2);
    builder.lineTo(index + 1, 0);
  }
  expect(builder.done()[0]?.spans.map(({ from }) => from)).toEqual([1, 1, 1, 4, 1]);
});
