import { describe, expect, it } from 'vitest';
import { parseTransformList, transformMatrix } from '../../../src/drawing/viewport/transform-list';

const BOX = { x: 0, y: 0, width: 200, height: 100 };

function matrixOf(text: string): number[] {
  const { functions } = parseTransformList(text);
  if (!functions) throw new Error('invalid');
  return Object.values(transformMatrix(functions, BOX)).map((value: number) => Math.round(value * 1e9) / 1e9 + 0);
}

describe('parseTransformList', () => {
  it.each([
    ['', [1, 0, 0, 1, 0, 0]],
    ['none', [1, 0, 0, 1, 0, 0]],
    ['  ', [1, 0, 0, 1, 0, 0]],
    ['translate(10-5)', [1, 0, 0, 1, 10, -5]],
    ['scale(.5.5)', [0.5, 0, 0, 0.5, 0, 0]],
    ['scale(2 -3)', [2, 0, 0, -3, 0, 0]],
    ['translate(1,2)rotate(90)', [0, 1, -1, 0, 1, 2]],
    ['translate(1 2) , scale(2)', [2, 0, 0, 2, 1, 2]],
    ['rotate(90 10 0)', [0, 1, -1, 0, 10, -10]],
    ['rotate(90,10,0)', [0, 1, -1, 0, 10, -10]],
    ['rotate(-270)', [0, 1, -1, 0, 0, 0]],
    ['skewX(45)', [1, 0, 1, 1, 0, 0]],
    ['skewY(45)', [1, 1, 0, 1, 0, 0]],
    ['matrix(1 2 3 4 5 6)', [1, 2, 3, 4, 5, 6]],
    ['matrix(1e0,2,3,4,5,6)', [1, 2, 3, 4, 5, 6]],
    ['translateX(1in)', [1, 0, 0, 1, 96, 0]],
    ['translate(50%, 10%)', [1, 0, 0, 1, 100, 10]],
    ['scaleY(3)', [1, 0, 0, 3, 0, 0]],
    ['rotate(.25turn)', [0, 1, -1, 0, 0, 0]],
    ['rotate(100grad)', [0, 1, -1, 0, 0, 0]],
    ['scale(50%)', [0.5, 0, 0, 0.5, 0, 0]],
  ])('%j', (text, expected) => {
    expect(matrixOf(text)).toEqual(expected);
  });

  it.each([
    ['turn(3)', 'turn'],
    ['rotate 3', '3'],
    ['rotate(3', 'rotate(3'],
    ['rotate(3 4)', 'rotate(3 4)'],
    ['translate(x)', 'x'],
    ['translate(1,2) scale(', 'scale('],
    ['matrix(1 2 3)', 'matrix(1 2 3)'],
    ['scale()', 'scale()'],
    ['rotate(3m)', '3'],
    ['(', '('],
    ['translate3d(1,2,3)', 'translate3d'],
    ['constructor(1)', 'constructor'],
  ])('%j is wrong at %j', (text, wrong) => {
    const { error } = parseTransformList(text);
    expect(error && text.slice(error.span.from, error.span.to)).toBe(wrong);
    expect(error?.message).toMatch(/\.$/);
  });
});
