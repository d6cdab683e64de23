import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arcFromEndpoints } from '../../../src/drawing/outline/arc';
import { pointAt } from '../../../src/geometry/curve/index';

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const endpoints = fc
  .record({
    start: fc.record({ x: coordinate, y: coordinate }),
    end: fc.record({ x: coordinate, y: coordinate }),
    radiusX: fc.double({ min: 0.1, max: 200, noNaN: true }),
    radiusY: fc.double({ min: 0.1, max: 200, noNaN: true }),
    rotation: fc.double({ min: -360, max: 360, noNaN: true }),
    large: fc.boolean(),
    sweep: fc.boolean(),
  })
  .filter(({ start, end }) => Math.hypot(start.x - end.x, start.y - end.y) > 1e-3);

test('the centre form passes through both ends, turns as told, and by more than half only when large', () => {
  fc.assert(
    fc.property(endpoints, (item) => {
      const arc = arcFromEndpoints(item);
      if (arc?.kind !== 'arc') throw new Error('no arc');
      for (const [t, wanted] of [
        [1e-12, item.start],
        [1 - 1e-12, item.end],
      ] as const) {
        const at = pointAt(arc, t);
        expect(Math.hypot(at.x - wanted.x, at.y - wanted.y)).toBeLessThan(1e-6);
      }
      expect(arc.sweep > 0).toBe(item.sweep);
      if (item.large) expect(Math.abs(arc.sweep)).toBeGreaterThan(Math.PI - 1e-6);
      else expect(Math.abs(arc.sweep)).toBeLessThan(Math.PI + 1e-6);
    }),
    { numRuns: 500 },
  );
});

test('going back along the same ellipse has the same centre', () => {
  fc.assert(
    fc.property(endpoints, (item) => {
      const there = arcFromEndpoints(item);
      const back = arcFromEndpoints({ ...item, start: item.end, end: item.start, sweep: !item.sweep });
      if (there?.kind !== 'arc' || back?.kind !== 'arc') throw new Error('no arc');
      expect(Math.hypot(there.centre.x - back.centre.x, there.centre.y - back.centre.y)).toBeLessThan(1e-4);
    }),
  );
});
