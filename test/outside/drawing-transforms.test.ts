/**
 * Source: CSS Transforms Module Level 1 (https://www.w3.org/TR/css-transforms-1/) and SVG 2, "Styling"
 * (transform-origin in the user agent style sheet). Exact figures reckoned from the definitions.
 */
import { describe, expect, it } from 'vitest';
import { parseTransformList, transformMatrix } from '../../src/drawing/viewport/transform-list';
import { multiply } from '../../src/geometry/base/matrix';
import { boxes, drawMm } from '../drawing/draw';

const BOX = { x: 0, y: 0, width: 100, height: 100 };

function matrixOf(text: string): number[] {
  const { functions, error } = parseTransformList(text);
  if (!functions) throw new Error(error.message);
  const { a, b, c, d, e, f } = transformMatrix(functions, BOX);
  return [a, b, c, d, e, f];
}

function expectClose(actual: readonly number[], expected: readonly number[], digits: number): void {
  expect(actual.length).toBe(expected.length);
  actual.forEach((value, index) => expect(value).toBeCloseTo(expected[index] ?? NaN, digits));
}

describe('CSS Transforms 1', () => {
  it('the list is applied left to right', () => {
    expectClose(
      matrixOf('translate(-10px,-20px) scale(2) rotate(45deg) translate(5px,10px)'),
      [1.4142136, 1.4142136, -1.4142136, 1.4142136, -17.0710678, 1.2132034],
      7,
    );
  });

  it('nested elements equal one list: the nested example of the SVG specification', () => {
    const exact = [0.707107, -0.707107, 0.707107, 0.707107, 255.060967, 111.213203];
    expectClose(matrixOf('translate(50,90) rotate(-45) translate(130,160)'), exact, 6);
    // As printed there (NestedCalcs.png), with its own rounding.
    expect(Math.abs((matrixOf('translate(50,90) rotate(-45) translate(130,160)')[4] ?? 0) - 255.03)).toBeLessThan(0.05);
    const nested = drawMm(
      '<g transform="translate(50,90)"><g transform="rotate(-45)"><g transform="translate(130,160)">' +
        '<path d="M0 0h1v1z"/></g></g></g>',
    ).shapes[0]?.toMm;
    expectClose([nested!.a, nested!.b, nested!.c, nested!.d, nested!.e, nested!.f], exact, 6);
  });

  it('rotate with a centre is translate, rotate, translate back', () => {
    const parts = ['translate(30 20)', 'rotate(30)', 'translate(-30 -20)'].map((text) => {
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = matrixOf(text);
      return { a, b, c, d, e, f };
    });
    const product = parts.reduce(multiply);
    expectClose(matrixOf('rotate(30, 30, 20)'), [product.a, product.b, product.c, product.d, product.e, product.f], 12);
  });

  it('missing values: translate(x) has no y, scale(s) scales both ways', () => {
    expect(matrixOf('translate(7)')).toEqual([1, 0, 0, 1, 7, 0]);
    expect(matrixOf('scale(3)')).toEqual([3, 0, 0, 3, 0, 0]);
  });

  it('a style beats the attribute', () => {
    const drawing = drawMm(
      '<style>.moved{transform:translate(10px,10px)}</style>' +
        '<rect class="moved" transform="translate(20 20)" width="5" height="5"/>',
    );
    expect(boxes(drawing)).toEqual([[10, 10, 5, 5]]);
  });

  it('an element whose transform cannot be undone is not displayed', () => {
    expect(drawMm('<rect transform="scale(0)" width="5" height="5"/>').shapes).toEqual([]);
    expect(drawMm('<rect transform="matrix(1 1 1 1 0 0)" width="5" height="5"/>').shapes).toEqual([]);
  });

  it('the origin of elements in SVG is 0 0 of the user space', () => {
    expect(boxes(drawMm('<rect transform="scale(2)" x="10" y="10" width="5" height="5"/>'))).toEqual([
      [20, 20, 10, 10],
    ]);
    expect(
      boxes(
        drawMm('<rect style="transform-origin:center" transform="scale(2)" x="45" y="45" width="10" height="10"/>'),
      ),
    ).toEqual([[40, 40, 20, 20]]);
    expect(
      boxes(
        drawMm(
          '<rect style="transform-origin:50% 50%;transform-box:fill-box" transform="rotate(90)" x="10" ' +
            'y="10" width="20" height="10"/>',
        ),
      ),
    ).toEqual([[15, 5, 10, 20]]);
  });
});
