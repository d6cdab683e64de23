import { describe, expect, it } from 'vitest';
import { drawBeside, shapeBeside } from '../../../src/edits/element/draw-beside';
import { check } from '../../../src/engine/index';
import { polygonOfBox } from '../../../src/geometry/base/ring';
import { applyEdits } from '../../../src/text/text';

const text =
  '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50">' +
  '<rect x="5" y="5" width="9" height="9" fill="#3b4a54"/></svg>';
const { sheets, drawing } = check(text);
const model = shapeBeside(sheets[0]!, [{ x: 5, y: 9 }])!;
const box = (minX: number, minY: number, maxX: number, maxY: number) => polygonOfBox({ minX, minY, maxX, maxY });

describe('a region drawn beside a shape', () => {
  it('is one more element that looks as the shape does', () => {
    const drawn = applyEdits(text, drawBeside(drawing, model, [box(20, 20, 30, 30)]));
    expect(drawn).toMatch(/<rect [^>]*\/><path fill="#3b4a54" d="M[^"]*Z"\/><\/svg>$/);
    expect(check(drawn).sheets[0]?.openings).toHaveLength(2);
  });

  it('leaves out slivers, and is nothing where it is nothing else', () => {
    const sliver = box(40, 20, 40.001, 20.002);
    const [edit] = drawBeside(drawing, model, [box(20, 20, 30, 30), sliver]);
    expect(edit?.text.match(/M/g)).toHaveLength(1);
    expect(drawBeside(drawing, model, [sliver])).toEqual([]);
  });
});
