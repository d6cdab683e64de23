/** A bridge of a plan, put to an island that has been drawn anew. */
import { bridgeAcrossGap } from '../../../edits/plan/at-point';
import { surroundingsOf } from '../../../edits/plan/index';
import type { Bridge } from '../../../edits/plan/types';
import type { Point } from '../../../geometry/base/curve-types';
import { boxOfRing } from '../../../geometry/base/ring';
import { add, distance, interpolate, normalise, perpendicular, scale, subtract } from '../../../geometry/base/vector';
import { buildSegmentIndex, nearestSegment } from '../../../geometry/spatial/segment-index';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { hiddenOn } from '../bridging/plan';
import { type IslandName, middleOf, movedWith, nameOfIsland } from './names';

/** A bridge as a plan has it: plain data, sheet mm. */
export interface KeptBridge {
  readonly island: IslandName;
  readonly from: Point;
  readonly to: Point;
  /** As cut. */
  readonly width: number;
}

/** mm: so far from where it stood in its island, along the gap, a bridge is looked for. */
const SEARCH = [0, 0.5, -0.5, 1, -1, 2, -2, 3, -3, 4.5, -4.5, 6, -6];

/** mm: bridges that leave an island nearer to each other are taken for one. */
const SAME_PLACE = 0.1;

export interface IslandNow {
  readonly piece: Piece;
  readonly name: IslandName;
}

/** The islands of a sheet, with their names. */
export function islandsNow(sheet: Sheet): IslandNow[] {
  return sheet.pieces.flatMap((piece) => {
    const name = piece.island ? nameOfIsland(sheet, piece) : undefined;
    return name ? [{ piece, name }] : [];
  });
}

/** The island of that name: by its element's id, or by its place among the elements where that has none. */
export function islandNamed<Named extends Pick<IslandNow, 'name'>>(
  name: IslandName,
  islands: readonly Named[],
): Named | undefined {
  const same = islands.filter(({ name: now }) =>
    name.id ? now.id === name.id : !now.id && now.ordinal === name.ordinal,
  );
  const off = ({ name: now }: Named): number =>
    distance(movedWith(middleOf(name.box), name.element, now.element), middleOf(now.box));
  return same.reduce<Named | undefined>((best, each) => (!best || off(each) < off(best) ? each : best), undefined);
}

/** Where a bridge of that width fits near its place, the nearest first, each once. */
export function* placesFor(
  report: Report,
  sheet: Sheet,
  { from, to, island, width }: KeptBridge,
  now: IslandNow,
): Generator<Bridge, undefined> {
  const { minX, minY, maxX, maxY } = boxOfRing(now.piece.polygon.outer);
  const moved = (point: Point): Point => movedWith(point, island.box, [minX, minY, maxX, maxY]);
  const along = normalise(subtract(to, from));
  const options = { width: width + sheet.kerf, exact: true, hidden: hiddenOn(report, sheet) };
  const around = report.session.remember(`round ${sheet.layer.id} for ${options.width}`, () =>
    surroundingsOf(sheet, options),
  );
  const edges = buildSegmentIndex([now.piece.polygon]);
  const beside = perpendicular(along ?? { x: 1, y: 0 });
  const found: Bridge[] = [];
  for (const off of SEARCH) {
    const place = add(moved(from), scale(beside, off));
    const bank = nearestSegment(edges, place)?.point ?? place;
    const ahead = add(bank, scale(along ?? { x: 1, y: 0 }, distance(from, to) / 2 + sheet.kerf / 2));
    const middle = off === 0 ? interpolate(moved(from), add(moved(from), subtract(to, from)), 0.5) : ahead;
    for (const through of [middle, ahead]) {
      const bridge = bridgeAcrossGap(sheet, through, options, along, around);
      if (!bridge || (bridge.island !== now.piece && bridge.target !== now.piece)) continue;
      if (found.some((other) => distance(other.from, bridge.from) < SAME_PLACE)) continue;
      found.push(bridge);
      yield bridge;
    }
  }
}
