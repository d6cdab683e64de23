/** The pieces that a sheet falls into when it is cut. */
import { checkpoint } from '../base/checkpoint';
import type { Point } from '../geometry/base/curve-types';
import type { Box, Polygon, Region, Ring } from '../geometry/base/polygon-types';
import { boxContainsBox, boxOfRing, growBox } from '../geometry/base/ring';
import { WRITTEN_STEP } from '../geometry/base/tolerances';
import { areaOf } from '../geometry/boolean/index';
import { matchIdentical } from '../geometry/polygon/diff';
import { inscribedDisc } from '../geometry/polygon/inscribed-circle';
import type { Piece } from './types';

/** How near to the frame an edge lies on it, in mm. */
const ON_FRAME = WRITTEN_STEP;

/** How finely label points are searched, in mm. They need only look right. */
const LABEL_PRECISION = 0.1;

/**
 * The connected components of the material as cut. The piece that holds most of the sheet's border comes first; every
 * other piece is an island.
 * @param polygons what is left of the sheet as cut, parted where it holds together by contact in points, in mm
 * @param frame the sheet's rectangle as cut
 * @param known pieces of a sheet of the same frame; those that did not change are not measured again
 */
export function piecesOf(polygons: Region, frame: Box, known: readonly Piece[] = []): readonly Piece[] {
  const held = polygons.map((polygon) => lengthOnFrame(polygon.outer, frame));
  const first = held.indexOf(held.reduce((most, each) => Math.max(most, each), 0));
  const twins = matchIdentical(
    polygons,
    known.map(({ polygon }) => polygon),
  );
  const pieces = polygons.map((polygon, i) => {
    const twin = known[twins[i] ?? -1];
    return twin?.island === (i !== first) ? twin : pieceFrom(polygon, i !== first);
  });
  return [...pieces.filter((piece) => !piece.island), ...pieces.filter((piece) => piece.island)];
}

/** The label takes a search, and few are asked for. */
function pieceFrom(polygon: Polygon, island: boolean): Piece {
  let label: Point | undefined;
  return {
    polygon,
    island,
    area: areaOf(polygon),
    get label() {
      return (label ??= inscribedDisc(polygon, LABEL_PRECISION).centre);
    },
  };
}

/** The length in mm of a ring that lies on the border of a box. */
export function lengthOnFrame(ring: Ring, box: Box): number {
  if (boxContainsBox(growBox(box, -ON_FRAME), boxOfRing(ring))) return 0;
  checkpoint(ring.length);
  let length = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [x0, y0, x1, y1] = [ring[j], ring[j + 1], ring[i], ring[i + 1]] as [number, number, number, number];
    const along =
      [box.minX, box.maxX].some((x) => near(x0, x) && near(x1, x)) ||
      [box.minY, box.maxY].some((y) => near(y0, y) && near(y1, y));
    if (along) length += Math.hypot(x1 - x0, y1 - y0);
  }
  return length;
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) <= ON_FRAME;
}
