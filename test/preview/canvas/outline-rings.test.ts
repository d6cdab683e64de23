import { describe, expect, it } from 'vitest';
import { signedArea } from '../../../src/geometry/base/ring';
import { levelFor, OutlineRings } from '../../../src/preview/canvas/outline-rings';

const everywhere = { minX: -1000, minY: -1000, maxX: 1000, maxY: 1000 };

function circle(x: number, y: number, radius: number, points = 4000): string {
  const all = Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return `${(x + radius * Math.cos(angle)).toFixed(3)} ${(y + radius * Math.sin(angle)).toFixed(3)}`;
  });
  return `M${all.join('L')}Z`;
}

function pointsOf(text: string): number[][] {
  return [...text.matchAll(/(-?[\d.]+(?:e-?\d+)?) (-?[\d.]+(?:e-?\d+)?)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

const made = (text: string): OutlineRings => {
  const rings = new OutlineRings();
  rings.set(text);
  return rings;
};

describe('an outline on the screen', () => {
  it('has a fraction of its points, none of its edges farther off than a quarter of a pixel', () => {
    const scale = 4;
    const points = pointsOf(made(circle(0, 0, 50)).within(everywhere, levelFor(scale)));
    expect(points.length).toBeLessThan(200);
    points.forEach(([x = 0, y = 0], i) => {
      const [nextX = 0, nextY = 0] = points[(i + 1) % points.length] ?? [];
      const sagitta = 50 - Math.hypot((x + nextX) / 2, (y + nextY) / 2);
      expect(sagitta * scale).toBeLessThan(0.26);
    });
  });

  it('has all of its points when it is looked at closely', () => {
    expect(pointsOf(made(circle(0, 0, 50)).within(everywhere, levelFor(2000)))).toHaveLength(4000);
  });

  it('leaves out rings that are far away, and cuts off those that reach far', () => {
    const rings = made(circle(0, 0, 5) + circle(100, 0, 5));
    expect(rings.within({ minX: 90, minY: -10, maxX: 110, maxY: 10 }, -20)).toBe(
      made(circle(100, 0, 5)).within(everywhere, -20),
    );
    const quarter = pointsOf(rings.within({ minX: 0, minY: 0, maxX: 10, maxY: 10 }, -20));
    expect(Math.abs(signedArea(Float64Array.from(quarter.flat())))).toBeCloseTo((Math.PI * 25) / 4, 2);
  });

  it('keeps the direction of holes and takes rectangles written with H and V', () => {
    const rings = made('M0 0H10V10H0ZM2 2L2 8L8 8L8 2Z');
    expect(rings.within(everywhere, -20)).toBe('M0 0L10 0L10 10L0 10ZM2 2L2 8L8 8L8 2Z');
  });

  it('is drawn again only when it has changed', () => {
    const rings = new OutlineRings();
    expect(rings.set('M0 0L1 0L1 1Z')).toBe(true);
    expect(rings.set('M0 0L1 0L1 1Z')).toBe(false);
    expect(rings.set('M0 0L1 0L1 2Z')).toBe(true);
    expect(rings.within(everywhere, -20)).toBe('M0 0L1 0L1 2Z');
  });

  it('keeps the same ring twice', () => {
    expect(made('M0 0L1 0L1 1ZM0 0L1 0L1 1Z').within(everywhere, -20)).toBe('M0 0L1 0L1 1ZM0 0L1 0L1 1Z');
  });

  it('leaves out what is smaller than a quarter of a pixel', () => {
    expect(made('M0 0L0.01 0L0.01 0.01L0 0.01Z').within(everywhere, levelFor(1))).toBe('');
  });
});
