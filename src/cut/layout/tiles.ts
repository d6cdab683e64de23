/** A sheet that is larger than the bed or the paper, in tiles that overlap and are joined again. */
import { limitsOf } from '../../config/limits';
import { type Config, DEFAULT_CONFIG } from '../../config/types';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxContainsBox, boxOfRing, ringsOf } from '../../geometry/base/ring';
import { boxOfPolygon, clipToBox, regionContains } from '../../geometry/boolean/index';
import { findThinPlaces } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { registrationMarks, wholeDetails } from '../../stack/registration-marks';
import { cutSheet } from '../cut-sheet';
import type { LoosePiece } from '../loose-pieces';
import type { CutOptions, CutSheet } from '../types';
import { type Detail, tilesAlong } from './joints';

export interface Tile {
  /** From 1, from above and from the left. */
  readonly row: number;
  readonly column: number;
  /** Sheet mm. */
  readonly box: Box;
}

export interface TileSize {
  readonly width: number;
  readonly height: number;
  /** mm by which neighbours lie over each other. */
  readonly overlap: number;
}

/** What is narrower than so many least bridges is one, or is as easily torn. */
const BRIDGES_WITHIN = 2.5;

/** A bridge, a mark or a detail that shall stay whole counts as so many mm of cut lines. */
const BRIDGE = 1000;

/** Joint ticks: mm long, and so far apart at most. */
const [TICK, TICK_STEP] = [4, 40];

/**
 * Where the sheet is parted: as few tiles as there can be, with joints that keep clear of bridges, register marks, details
 * that the artist has marked, and then of as many cut lines as they can.
 * @returns undefined where a tile is not even as wide as the overlap
 */
export function tilesOf(sheet: Sheet, size: TileSize, config: Config = DEFAULT_CONFIG): Tile[] | undefined {
  const narrow = findThinPlaces(sheet.material, BRIDGES_WITHIN * limitsOf(config).bridge, 0).map(
    ({ extent }) => extent,
  );
  const { minX, minY, maxX, maxY } = sheet.frame;
  const columns = tilesAlong(maxX - minX, size.width, size.overlap, detailsOf(sheet, narrow, 'x'));
  const rows = tilesAlong(maxY - minY, size.height, size.overlap, detailsOf(sheet, narrow, 'y'));
  if (!columns || !rows) return undefined;
  return rows.flatMap((y, row) =>
    columns.map((x, column) => ({
      row: row + 1,
      column: column + 1,
      box: { minX: minX + x.from, maxX: minX + x.to, minY: minY + y.from, maxY: minY + y.to },
    })),
  );
}

function detailsOf(sheet: Sheet, narrow: readonly Box[], axis: 'x' | 'y'): Detail[] {
  const start = axis === 'x' ? sheet.frame.minX : sheet.frame.minY;
  const along = ({ minX, minY, maxX, maxY }: Box, weight: number): Detail =>
    axis === 'x' ? { from: minX - start, to: maxX - start, weight } : { from: minY - start, to: maxY - start, weight };
  const lines = sheet.openings.flatMap(ringsOf).map((ring) => along(boxOfRing(ring), 2));
  const marks = registrationMarks(sheet.layer).map(({ box }) => along(box, BRIDGE));
  const kept = [...narrow, ...wholeDetails(sheet.layer)].map((box) => along(box, BRIDGE));
  return [...lines, ...marks, ...kept];
}

/** Each tile as a sheet of its own; a sheet that fits is a single one. */
export function cutTiles(
  sheet: Sheet,
  place: { readonly number: number; readonly count: number },
  size: TileSize,
  options: CutOptions,
  config?: Config,
  loose: readonly LoosePiece[] = [],
): CutSheet[] {
  const tiles = tilesOf(sheet, size, config) ?? [];
  if (tiles.length === 1) return [cutSheet(sheet, place, options, config, loose)];
  return tiles.map(({ row, column, box }) => {
    const part: Sheet = {
      ...sheet,
      layer: { ...sheet.layer, name: `${sheet.layer.name} ${row}-${column}` },
      frame: box,
      material: clipToBox(sheet.material, box),
      openings: clipToBox(sheet.openings, box),
    };
    const own = loose.filter(({ piece }) => boxContainsBox(box, boxOfPolygon(piece.polygon)));
    const cut = cutSheet(part, place, options, config, own);
    const ticks = ticksOf(sheet, tiles, box).map((line) =>
      line.map(({ x, y }) => ({ x: x - cut.origin.x, y: y - cut.origin.y })),
    );
    return { ...cut, pen: [...cut.pen, ...ticks] };
  });
}

/** On each overlap, where the neighbour's edge comes to lie: drawn where there is sheet to be drawn on. */
function ticksOf({ material }: Sheet, tiles: readonly Tile[], box: Box): Point[][] {
  const lines = tiles.flatMap(({ box: other }) => [
    ...[other.minX, other.maxX].filter((x) => x > box.minX && x < box.maxX).map((x) => ({ x })),
    ...[other.minY, other.maxY].filter((y) => y > box.minY && y < box.maxY).map((y) => ({ y })),
  ]);
  const unique = [...new Map(lines.map((line) => [JSON.stringify(line), line])).values()];
  return unique
    .flatMap((line) =>
      'x' in line
        ? evenly(box.minY, box.maxY).map((y): [Point, Point] => [
            { x: line.x, y },
            { x: line.x, y: y + TICK },
          ])
        : evenly(box.minX, box.maxX).map((x): [Point, Point] => [
            { x, y: line.y },
            { x: x + TICK, y: line.y },
          ]),
    )
    .filter((tick) => tick.every((end) => regionContains(material, end)));
}

function evenly(from: number, to: number): number[] {
  const count = Math.max(2, Math.ceil((to - from) / TICK_STEP));
  return Array.from({ length: count }, (_, i) => from + TICK + (i * (to - from - 3 * TICK)) / (count - 1));
}
