/** What the eye would have alike in a layer: mirror axes, equal islands, rows of letters. */
import { boxOfRing, joinBoxes } from '../../../geometry/base/ring';
import { buildSegmentIndex, type SegmentIndex } from '../../../geometry/spatial/segment-index';
import type { SheetMeasures } from '../../../sheet/types';
import { likenessesOf } from './alike';
import { islandGap } from './island-gap';
import { layerWires } from './layer-wires';
import { letterRowsOf } from './letter-rows';
import { mirrorsOf } from './mirrors';
import { alikeWithin } from './tolerance';
import type { Design } from './types';

export type { Counter, CounterPlace, Design, LetterRow, LikeIsland, Likeness, Mirror } from './types';

/**
 * The design of a layer. The same sheet gives the same design; a turned, mirrored or shifted one gives the same, turned,
 * mirrored or shifted.
 * @param edges of the sheet's pieces, numbered as they are, where they are known
 */
export function designOf(
  { pieces, openings }: Pick<SheetMeasures, 'pieces' | 'openings'>,
  edges: SegmentIndex = buildSegmentIndex(pieces.map(({ polygon }) => polygon)),
): Design {
  const islands = pieces.flatMap(({ island, polygon, area }, number) =>
    island ? [islandGap(edges, number, polygon.outer, area)] : [],
  );
  const letters = pieces.flatMap(({ island, polygon }, piece) => (island ? [{ piece, outer: polygon.outer }] : []));
  // The sheet's own edge is no part of the picture.
  const rings = pieces.flatMap(({ island, polygon }) => (island ? [polygon.outer, ...polygon.holes] : polygon.holes));
  const { minX, minY, maxX, maxY } = joinBoxes(rings.map(boxOfRing));
  const tolerance = alikeWithin(Math.hypot(maxX - minX, maxY - minY));
  return {
    mirrors: islands.length > 0 ? mirrorsOf(edges, islands, layerWires(rings), tolerance) : [],
    alike: likenessesOf(edges, islands),
    rows: letterRowsOf(letters, openings, edges),
  };
}
