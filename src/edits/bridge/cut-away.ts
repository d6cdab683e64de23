/** Cuts islands away that nothing is seen of: their outlines go, or a shape is drawn over them. Sheet mm. */
import type { Polygon, Region } from '../../geometry/base/polygon-types';
import { growBox } from '../../geometry/base/ring';
import { ON_CURVE, PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { boxOfPolygon, clipToBox, intersection, offset, regionContains, union } from '../../geometry/boolean/index';
import type { CutLine } from '../../sheet/cut-lines/index';
import type { Piece, Sheet } from '../../sheet/types';
import { drawBeside, shapeBeside } from '../element/draw-beside';
import { type EditResult, mergeResults } from '../element/result';
import { removeLines } from '../outline/merge-outlines';
import { makersOf } from '../outline/remove-makers';

/** How an island may be cut away: its own outlines are taken out, or its place is filled by one more shape. */
export type CutWay = 'outlines' | 'filled';

/** mm by which a shape reaches beyond the island into the opening round it, so that nothing is left between the two. */
const LAP = PLAINLY_BESIDE;

/** The ways that there are for an island, the one that leaves the drawing simpler first. */
export function waysToCutAway(sheet: Sheet, island: Piece): CutWay[] {
  const ways: CutWay[] = outlinesOf(sheet, island) ? ['outlines'] : [];
  return sheet.layer.reading === 'openings' ? [...ways, 'filled'] : ways;
}

/** All islands together, each in its way. */
export function cutAway(sheet: Sheet, islands: ReadonlyMap<Piece, CutWay>): EditResult {
  const lines: CutLine[] = [];
  const filled: Polygon[] = [];
  for (const [island, way] of islands) {
    const own = way === 'outlines' ? outlinesOf(sheet, island) : undefined;
    if (own) lines.push(...own.filter((line) => !lines.some((other) => isSameLine(line, other))));
    else filled.push(island.polygon);
  }
  return mergeResults([removeLines(sheet.drawing, lines), fill(sheet, filled)]);
}

/** What is seen of the drawing to change when an island goes: its place, as drawn. */
export function drawnPlace({ kerf }: Sheet, { polygon }: Piece): Region {
  return offset([polygon], kerf / 2 + ON_CURVE, 'miter');
}

function outlinesOf(sheet: Sheet, island: Piece): readonly CutLine[] | undefined {
  const drawn = drawnIsland(sheet, island);
  return drawn && makersOf(sheet, drawn);
}

/** The kerf makes a piece smaller than it is drawn; where it burns bridges away, the piece is none in the drawing. */
function drawnIsland({ kerf, material, pieces }: Sheet, island: Piece): Polygon | undefined {
  if (kerf === 0) return island.polygon;
  const drawn = material.find((polygon) => regionContains([polygon], island.label));
  const isAlone = drawn && pieces.every((piece) => piece === island || !regionContains([drawn], piece.label));
  return isAlone ? drawn : undefined;
}

function isSameLine(a: CutLine, b: CutLine): boolean {
  return a.shape === b.shape && a.subpath === b.subpath;
}

/** One shape for all: it reaches into the openings round them, and nowhere else. */
function fill(sheet: Sheet, islands: readonly Polygon[]): EditResult {
  if (islands.length === 0) return { edits: [] };
  const region = islands.flatMap((island) => reachingOut(sheet, island));
  const places = islands.map(({ outer }) => ({ x: outer[0] ?? 0, y: outer[1] ?? 0 }));
  const model = shapeBeside(sheet, places);
  if (!model) return { refusal: `Layer "${sheet.layer.name}" has no shape that another could be drawn beside.` };
  return { edits: drawBeside(sheet.drawing, model, region) };
}

function reachingOut({ openings, kerf }: Sheet, island: Polygon): Region {
  const whole = offset([island], kerf / 2 + LAP);
  const near = clipToBox(openings, growBox(boxOfPolygon(island), kerf + 2 * LAP));
  return intersection(whole, union([near, offset([island], kerf / 2 + ON_CURVE)]));
}
