/** Measures that no sheet can have never stand in a message, whatever the numbers of a drawing are. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { nonsenseIn } from '../../fuzz/nonsense';

const SIZE = fc
  .tuple(fc.constantFrom(1, -1), fc.double({ min: -12, max: 308, noNaN: true }))
  .map(([sign, power]) => String(sign * 10 ** power));
const NUMBER = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 0, max: 40 }).map(String) },
  { weight: 1, arbitrary: SIZE },
);
const numbers = (count: number) => fc.array(NUMBER, { minLength: count, maxLength: count });

const DRAWING = fc
  .tuple(numbers(2), numbers(4), numbers(10), numbers(3), numbers(4), numbers(2))
  .map(
    ([size, box, path, circle, rect, stroke]) =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="${size[0]}mm" height="${size[1]}mm" viewBox="${box.join(' ')}">` +
      `<path d="M${path.slice(0, 4).join(' ')} C${path.slice(4).join(' ')}z"/>` +
      `<circle cx="${circle[0]}" cy="${circle[1]}" r="${circle[2]}"/>` +
      `<rect x="${rect[0]}" y="${rect[1]}" width="${rect[2]}" height="${rect[3]}"/>` +
      `<path d="M1 1 L30 ${rect[0]}" fill="none" stroke="#000" stroke-width="${stroke[0]}" stroke-dasharray="${stroke[1]} 3"/></svg>`,
  );

test('no message has a measure that no sheet can have', () => {
  const run = (text: string) => {
    const messages = check(text).complete.map(({ message }) => message);
    expect(messages.filter((message) => nonsenseIn(message) !== undefined)).toEqual([]);
  };
  fc.assert(fc.property(DRAWING, run), { numRuns: 60 });
});

test('what is nonsense is known as such', () => {
  expect(['Bridge 148166666666.67 mm wide', 'Opening 5e+307 mm', 'NaN mm', 'Infinity mm'].map(nonsenseIn)).toEqual([
    '148166666666.67',
    '5e+307',
    'NaN',
    'Infinity',
  ]);
  expect(
    ['Bridge 0.42 mm wide', 'width="5e+307mm" is larger than a sheet', '"NaN" is no number'].map(nonsenseIn),
  ).toEqual([undefined, undefined, undefined]);
});
