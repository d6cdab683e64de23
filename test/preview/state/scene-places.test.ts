import { describe, expect, it, test } from 'vitest';
import { IDENTITY, rotation, translation } from '../../../src/geometry/base/matrix';
import { areaBelow } from '../../../src/preview/canvas/cutting-area';
import { layersOf, placeOfLayer, placesAtPoint } from '../../../src/preview/state/scene-places';
import { viewportBox } from '../../../src/preview/state/viewport';
import { measurementText } from '../../../src/preview/tools/measure-tool';
import { toolForKey } from '../../../src/preview/tools/tool-bar';

const view = { scale: 2, x: 10, y: 20 };
const look = {
  sceneLayers: [
    { layer: undefined, place: IDENTITY },
    { layer: 0, place: IDENTITY },
    { layer: 2, place: translation(5, 0) },
  ],
};

describe('a point of the window', () => {
  it('lies on each sheet where that sheet lies, the uppermost first; what has no layer is left out', () => {
    expect(placesAtPoint(look, view, { x: 50, y: 40 })).toEqual([
      { layer: 2, point: { x: 15, y: 10 } },
      { layer: 0, point: { x: 20, y: 10 } },
    ]);
    expect(layersOf(look)).toEqual([0, 2]);
    expect(placeOfLayer(look, 2)).toEqual(translation(5, 0));
    expect(placeOfLayer(look, 1)).toBeUndefined();
  });
});

describe('what the window shows', () => {
  it('is a box of the sheet, and of a sheet that lies elsewhere another', () => {
    expect(viewportBox(view, { width: 100, height: 60 })).toEqual({ minX: -5, minY: -10, maxX: 45, maxY: 20 });
    expect(viewportBox(view, { width: 100, height: 60 }, translation(5, 1))).toEqual({
      minX: -10,
      minY: -11,
      maxX: 40,
      maxY: 19,
    });
  });

  it('holds all of the window where the sheet is turned', () => {
    const { minX, minY, maxX, maxY } = viewportBox(view, { width: 100, height: 60 }, rotation(Math.PI / 2));
    expect([minX, maxX, minY, maxY].map((value) => Math.round(value * 1e6) / 1e6 + 0)).toEqual([-10, 20, -45, 5]);
  });
});

describe('the cutting area', () => {
  const sheet = { minX: -5, minY: -5, maxX: 153, maxY: 110 };

  it('begins where the sheet begins', () => {
    expect(areaBelow(sheet, [300, 200])).toEqual({ minX: -5, minY: -5, maxX: 295, maxY: 195 });
  });

  it('is turned by a quarter only where the sheet fits only so', () => {
    expect(areaBelow(sheet, [120, 160])).toEqual({ minX: -5, minY: -5, maxX: 155, maxY: 115 });
    expect(areaBelow(sheet, [100, 100])).toEqual({ minX: -5, minY: -5, maxX: 95, maxY: 95 });
  });
});

test('the tape tells the distance and its parts', () => {
  expect(measurementText({ x: 1, y: 1 }, { x: 4, y: -3 })).toBe('5.00 mm (3.00 across, 4.00 down)');
});

test('each tool has its key, in either case', () => {
  expect(['f', 'M', 'b', 'x', 'Enter'].map(toolForKey)).toEqual(['pick', 'measure', 'bridge', undefined, undefined]);
});
