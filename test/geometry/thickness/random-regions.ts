/** Random curved regions: unions of ellipses and rounded polygons, less some more of them; about 40 mm across. */
import type { Region, Ring } from '../../../src/geometry/base/polygon-types';
import { ringsOf } from '../../../src/geometry/base/ring';
import { difference, offset, regionFromRings } from '../../../src/geometry/boolean/index';
import { type Draw, drawFrom } from './shapes';

const FLATNESS = 0.0025;
const SIZE = 40;

export function randomRegion(seed: number): Region {
  const draw = drawFrom(seed);
  const added = Array.from({ length: 6 + Math.floor(10 * draw()) }, () => {
    return draw() < 0.65 ? [randomEllipse(draw, 2, 6, 1.5, 5)] : roundedPolygon(draw, 3 + 6 * draw());
  });
  const taken = Array.from({ length: Math.floor(14 * draw()) }, () => {
    return draw() < 0.7 ? randomEllipse(draw, 0.7, 4, 0.7, 2) : randomPolygon(draw, 1 + 4 * draw());
  });
  const region = regionFromRings(added.flat(), 'nonzero');
  return taken.length > 0 ? difference(region, regionFromRings(taken, 'nonzero')) : region;
}

function randomEllipse(draw: Draw, leastA: number, moreA: number, leastB: number, moreB: number): Ring {
  const [x, y] = [SIZE * draw(), SIZE * draw()];
  const [a, b, turn] = [leastA + moreA * draw(), leastB + moreB * draw(), 3 * draw()];
  const count = Math.max(8, Math.ceil((2 * Math.PI) / Math.sqrt((8 * FLATNESS) / Math.max(a, b))));
  const points: number[] = [];
  for (let at = 0; at < count; at += 1) {
    const angle = (2 * Math.PI * at) / count;
    const [along, across] = [a * Math.cos(angle), b * Math.sin(angle)];
    points.push(x + along * Math.cos(turn) - across * Math.sin(turn));
    points.push(y + along * Math.sin(turn) + across * Math.cos(turn));
  }
  return Float64Array.from(points);
}

function randomPolygon(draw: Draw, size: number): Ring {
  const [x, y] = [SIZE * draw(), SIZE * draw()];
  const count = 3 + Math.floor(6 * draw());
  const points: number[] = [];
  for (let at = 0; at < count; at += 1) {
    const angle = (2 * Math.PI * (at + 0.8 * draw())) / count;
    const radius = size * (0.4 + 0.6 * draw());
    points.push(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
  }
  return Float64Array.from(points);
}

function roundedPolygon(draw: Draw, size: number): Ring[] {
  const sharp = regionFromRings([randomPolygon(draw, size)], 'nonzero');
  const round = draw() < 0.5 ? sharp : offset(sharp, 0.3 + 1.5 * draw(), 'round', FLATNESS);
  return round.flatMap(ringsOf);
}
