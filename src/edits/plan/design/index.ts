/** What the eye would have alike in a layer: mirror axes, equal islands, rows of letters. */
import { defined } from '../../../base/defined';
import { derivedFacts } from '../../../geometry/base/derived-facts';
import { boxOfRing, joinBoxes } from '../../../geometry/base/ring';
import { buildSegmentIndex, type SegmentIndex } from '../../../geometry/spatial/segment-index';
import type { Piece, SheetMeasures } from '../../../sheet/types';
import { likenessesOf } from './alike';
import { islandGap } from './island-gap';
import { layerWires } from './layer-wires';
import { letterRowsOf } from './letter-rows';
import { mirrorsOf } from './mirrors';
import { nestedChains, nestsOf, withoutChance } from './nests';
import { alikeWithin } from './tolerance';
import { withoutMirrored, withoutTurned } from './true-rows';
import type { Design, LetterRow } from './types';

export type { Counter, CounterPlace, Design, LetterRow, LikeIsland, Likeness, Mirror, Nest } from './types';

const designs = derivedFacts.table<readonly Piece[], Design>('design of pieces');

/**
 * The design of a layer. The same sheet gives the same design; a turned, mirrored or shifted one gives the same, turned,
 * mirrored or shifted, but for the lines of nests that are mirrored about no axis: those are upright and level.
 * @param edges of the sheet's pieces, numbered as they are, where they are known
 */
export function designOf(sheet: Pick<SheetMeasures, 'pieces' | 'openings'>, edges?: SegmentIndex): Design {
  const known = designs.find(sheet.pieces);
  if (known) return known.value;
  const design = computeDesign(sheet, edges ?? buildSegmentIndex(sheet.pieces.map(({ polygon }) => polygon)));
  designs.set(sheet.pieces, design);
  return design;
}

function computeDesign({ pieces, openings }: Pick<SheetMeasures, 'pieces' | 'openings'>, edges: SegmentIndex): Design {
  const islands = pieces.flatMap(({ island, polygon, area }, number) =>
    island ? [islandGap(edges, number, polygon.outer, area)] : [],
  );
  if (islands.length === 0) return { mirrors: [], alike: [], rows: [], nests: [] };
  const letters = islands.map(({ piece }) => ({ piece, outer: defined(pieces[piece]).polygon.outer }));
  const alike = likenessesOf(edges, islands);
  const rows = withoutTurned(letterRowsOf(letters, openings, edges), alike);
  // The sheet's own edge is no part of the picture.
  const rings = pieces.flatMap(({ island, polygon }) => (island ? [polygon.outer, ...polygon.holes] : polygon.holes));
  const { minX, minY, maxX, maxY } = joinBoxes(rings.map(boxOfRing));
  const picture = { wires: layerWires(rings), tolerance: alikeWithin(Math.hypot(maxX - minX, maxY - minY)) };
  const mirrors = mirrorsOf(edges, islands, { ...picture, inWords: membersOf(rows) });
  const kept = withoutMirrored(rows, mirrors);
  const inWords = membersOf(kept);
  const all = kept.length === rows.length ? mirrors : mirrorsOf(edges, islands, { ...picture, inWords });
  const nested = islands.map(({ piece }) => ({ piece, ...defined(pieces[piece]) }));
  const chains = nestedChains(nested, inWords);
  const seen = withoutChance(all, chains);
  return { mirrors: seen, alike, rows: kept, nests: nestsOf(chains, edges, seen) };
}

function membersOf(rows: readonly LetterRow[]): Set<number> {
  return new Set(rows.flatMap(({ counters }) => counters.map(({ piece }) => piece)));
}
