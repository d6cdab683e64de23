import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bringIntoView,
  centreOn,
  fit as fitView,
  insetFor,
  pan,
  toSheet,
  toWindow,
  type Viewport,
  zoomAt,
} from '../../../src/preview/state/viewport';

const views: fc.Arbitrary<Viewport> = fc.record({
  scale: fc.double({ min: 0.1, max: 500, noNaN: true }),
  x: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
  y: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
});
const coordinates = fc.double({ min: -500, max: 500, noNaN: true });
const points = fc.record({ x: coordinates, y: coordinates });

describe('the view', () => {
  it('goes to the window and back', () => {
    fc.assert(
      fc.property(views, points, (view, point) => {
        const back = toSheet(view, toWindow(view, point));
        expect(back.x).toBeCloseTo(point.x, 6);
        expect(back.y).toBeCloseTo(point.y, 6);
      }),
    );
  });

  it('shows a whole sheet, centred, at true proportions, with its padding', () => {
    const view = fitView(
      { width: 400, height: 600 },
      { minX: -5, minY: -5, maxX: 153, maxY: 110 },
      { side: 21, top: 21, bottom: 40 },
    );
    const [start, end] = [toWindow(view, { x: -5, y: -5 }), toWindow(view, { x: 153, y: 110 })];
    expect(start.x).toBeCloseTo(21);
    expect(end.x).toBeCloseTo(379);
    expect(start.y + end.y).toBeCloseTo(600);
    expect((end.y - start.y) / (end.x - start.x)).toBeCloseTo(115 / 158);
  });

  it('keeps a whole sheet clear of the scale bar where it would lie over it', () => {
    const box = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
    const view = fitView({ width: 900, height: 500 }, box, { side: 12, top: 12, bottom: 32 });
    expect(toWindow(view, { x: 0, y: 0 }).y).toBeCloseTo(12);
    expect(toWindow(view, { x: 0, y: 100 }).y).toBeCloseTo(468);
  });

  it('stays sane for sheets and windows without size', () => {
    for (const maxX of [0, 1]) {
      const view = fitView(
        { width: 0, height: 0 },
        { minX: 0, minY: 0, maxX, maxY: 0 },
        insetFor({ width: 0, height: 0 }),
      );
      expect(Object.values(view).every(Number.isFinite)).toBe(true);
    }
  });

  it('scales about the pointer, whose place on the sheet does not move', () => {
    fc.assert(
      fc.property(views, points, fc.double({ min: 0.01, max: 100, noNaN: true }), (view, at, factor) => {
        const [before, after] = [toSheet(view, at), toSheet(zoomAt(view, at, factor), at)];
        expect(after.x).toBeCloseTo(before.x, 5);
        expect(after.y).toBeCloseTo(before.y, 5);
      }),
    );
  });

  it('shifts no more than it must to show a place', () => {
    const window = { width: 400, height: 300 };
    const view = centreOn(window, { x: 50, y: 50 }, 4);
    expect(bringIntoView(view, { x: 50, y: 50 }, window, 20)).toEqual(pan(view, 0, 0));
    const shifted = bringIntoView(view, { x: 150, y: 50 }, window, 20);
    expect(toWindow(shifted, { x: 150, y: 50 })).toEqual({ x: 380, y: 150 });
  });
});
