/** All outlines of a layer together. Sheet mm. */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { perimeter } from '../../../geometry/base/ring';
import { type RingShape, shapeOfRings } from './ring-shape';

export interface LayerWires {
  readonly shape: RingShape;
  /** Places on the outlines, even along them. */
  readonly samples: readonly Point[];
}

/** So many places stand for all outlines. */
const SAMPLES = 400;

export function layerWires(rings: readonly Ring[]): LayerWires {
  const step = rings.reduce((sum, ring) => sum + perimeter(ring), 0) / SAMPLES;
  return { shape: shapeOfRings(rings), samples: step > 0 ? placesAlong(rings, step) : [] };
}

/** Places at even steps, one outline's after the other's. */
export function placesAlong(rings: readonly Ring[], step: number): Point[] {
  const places: Point[] = [];
  let [passed, next] = [0, step / 2];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const [x0, y0] = [defined(ring[i]), defined(ring[i + 1])];
      const [x1, y1] = [defined(ring[(i + 2) % ring.length]), defined(ring[(i + 3) % ring.length])];
      const size = Math.hypot(x1 - x0, y1 - y0);
      for (; next < passed + size; next += step) {
        const t = (next - passed) / size;
        places.push({ x: x0 + t * (x1 - x0), y: y0 + t * (y1 - y0) });
      }
      passed += size;
    }
  }
  return places;
}
