/** Region algebra against two independent libraries: clipper-lib 6.4.2 (Vatti) and jsts 2.12.1 (noding overlay). */
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Region, Ring } from '../../src/geometry/base/polygon-types';
import { ringsOf } from '../../src/geometry/base/ring';
import { areaOf, difference, intersection, offset, regionFromRings, union } from '../../src/geometry/boolean/index';
import { looseRing } from '../geometry/arbitraries';

const load = createRequire(import.meta.url);

interface IntPoint {
  readonly X: number;
  readonly Y: number;
}
type Paths = IntPoint[][];

interface ClipperLibrary {
  readonly Clipper: {
    new (): {
      AddPaths(paths: Paths, type: number, closed: boolean): void;
      Execute(clip: number, solution: Paths, subject: number, other: number): boolean;
    };
    Area(path: IntPoint[]): number;
  };
  readonly ClipType: { readonly ctUnion: number; readonly ctDifference: number; readonly ctIntersection: number };
  readonly PolyType: { readonly ptSubject: number; readonly ptClip: number };
  readonly PolyFillType: { readonly pftNonZero: number; readonly pftEvenOdd: number };
  readonly Paths: new () => Paths;
}

const library = load('clipper-lib') as ClipperLibrary;

function clipperArea(
  subject: readonly Ring[],
  clip: readonly Ring[],
  operation: number,
  fill: number,
): { area: number; outers: number } {
  const engine = new library.Clipper();
  engine.AddPaths(subject.map(toPath), library.PolyType.ptSubject, true);
  engine.AddPaths(clip.map(toPath), library.PolyType.ptClip, true);
  const solution = new library.Paths();
  engine.Execute(operation, solution, fill, fill);
  const areas = solution.map((path) => library.Clipper.Area(path) / 1e8);
  return { area: areas.reduce((sum, area) => sum + area, 0), outers: areas.filter((area) => area > 1e-3).length };
}

function toPath(ring: Ring): IntPoint[] {
  return Array.from({ length: ring.length / 2 }, (_, at) => ({
    X: Math.round((ring[2 * at] ?? 0) * 1e4),
    Y: Math.round((ring[2 * at + 1] ?? 0) * 1e4),
  }));
}

const rings = fc.array(looseRing, { minLength: 1, maxLength: 4 });
const rules = [
  ['nonzero', library.PolyFillType.pftNonZero],
  ['evenodd', library.PolyFillType.pftEvenOdd],
] as const;

/** Both round crossings to 0.1 µm: over outlines of some metres that is a few 0.001 mm². */
const SLACK = 0.05;

describe('clipper-lib', () => {
  it.each(rules)('fills by %s alike', (rule, fill) => {
    fc.assert(
      fc.property(rings, (shapes) => {
        const region = regionFromRings(shapes, rule);
        const other = clipperArea(shapes, [], library.ClipType.ctUnion, fill);
        expect(Math.abs(areaOf(region) - other.area)).toBeLessThan(SLACK);
        // The library leaves joined what touches in a point, so it never counts more.
        expect(other.outers).toBeLessThanOrEqual(region.length);
      }),
      { numRuns: 150 },
    );
  });

  it('combines alike', () => {
    fc.assert(
      fc.property(rings, rings, (first, second) => {
        const [a, b] = [regionFromRings(first, 'nonzero'), regionFromRings(second, 'nonzero')];
        const { ctUnion, ctDifference, ctIntersection } = library.ClipType;
        const other = (operation: number): number =>
          clipperArea(first, second, operation, library.PolyFillType.pftNonZero).area;
        expect(Math.abs(areaOf(union([a, b])) - other(ctUnion))).toBeLessThan(SLACK);
        expect(Math.abs(areaOf(difference(a, b)) - other(ctDifference))).toBeLessThan(SLACK);
        expect(Math.abs(areaOf(intersection(a, b)) - other(ctIntersection))).toBeLessThan(SLACK);
      }),
      { numRuns: 150 },
    );
  });
});

interface JstsGeometry {
  getArea(): number;
}

interface JstsFactory {
  createLinearRing(points: readonly unknown[]): unknown;
  createPolygon(shell: unknown, holes: readonly unknown[]): JstsGeometry;
}

const jsts = 'jsts/org/locationtech/jts';
const defaultOf = async <T>(path: string): Promise<T> =>
  ((await import(/* @vite-ignore */ path)) as { default: T }).default;
const Factory = await defaultOf<new () => JstsFactory>(`${jsts}/geom/GeometryFactory.js`);
const Coordinate = await defaultOf<new (x: number, y: number) => unknown>(`${jsts}/geom/Coordinate.js`);
const buffering = await defaultOf<{
  bufferOp(shape: JstsGeometry, distance: number, quadrantSegments: number): JstsGeometry;
}>(`${jsts}/operation/buffer/BufferOp.js`);
const factory = new Factory();

function linearRing(ring: Ring): unknown {
  const points = Array.from(
    { length: ring.length / 2 },
    (_, at) => new Coordinate(ring[2 * at] ?? 0, ring[2 * at + 1] ?? 0),
  );
  return factory.createLinearRing([...points, points[0]]);
}

function toJsts(region: Region): JstsGeometry[] {
  return region.map((polygon) => {
    const [outer, ...holes] = ringsOf(polygon).map(linearRing);
    return factory.createPolygon(outer, holes);
  });
}

describe('jsts', () => {
  it('measures the same areas', () => {
    fc.assert(
      fc.property(rings, (shapes) => {
        const region = regionFromRings(shapes, 'evenodd');
        const areas = toJsts(region).reduce((sum, polygon) => sum + polygon.getArea(), 0);
        expect(Math.abs(areas - areaOf(region))).toBeLessThan(1e-6);
      }),
      { numRuns: 100 },
    );
  });

  it('offsets alike', () => {
    const deltas = fc.constantFrom(-2, -0.3, 0.1, 1.5);
    fc.assert(
      fc.property(looseRing, deltas, (ring, delta) => {
        const region = regionFromRings([ring], 'nonzero').filter((polygon) => areaOf(polygon) > 1);
        const mine = region.map((polygon) => areaOf(offset([polygon], delta, 'round', 1e-3)));
        toJsts(region).forEach((polygon, index) => {
          const theirs = buffering.bufferOp(polygon, delta, 64).getArea();
          expect(Math.abs(theirs - (mine[index] ?? Number.NaN))).toBeLessThan(0.2 + 1e-3 * Math.abs(delta) * 400);
        });
      }),
      { numRuns: 60 },
    );
  });
});
