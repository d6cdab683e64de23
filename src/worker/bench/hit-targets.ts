/** The parts of a sheet that can be pointed at: openings, islands, ties and slots. Sheet mm. */
import type { Point } from '../../geometry/base/curve-types';
import { pointInside } from '../../geometry/base/point-inside';
import type { Box, Polygon } from '../../geometry/base/polygon-types';
import { boxContains, forEachEdge, growBox, joinBoxes, nearestOnEdge, ringsOf } from '../../geometry/base/ring';
import { distance, interpolate } from '../../geometry/base/vector';
import { areaOf, boxOfPolygon, perimeterOf, regionContains } from '../../geometry/boolean/index';
import type { PartKind } from '../../protocol/parts';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';

export interface SheetPart {
  readonly kind: PartKind;
  readonly box: Box;
  /** A place to point to it. */
  readonly at: Point;
  /** mm²; 0 for places that are only narrow */
  readonly area: number;
  /** mm of cut line; 0 for places that are only narrow */
  readonly cutLength: number;
  readonly polygon: Polygon | undefined;
  readonly thin: ThinPlace | undefined;
}

export class SheetParts {
  /** Openings, then islands, then ties, then slots; each row by row from the upper left corner. */
  readonly all: readonly SheetPart[];
  private readonly narrow: readonly SheetPart[];
  private readonly wide: readonly SheetPart[];

  constructor({ openings, pieces, thinMaterial, thinOpenings }: Sheet) {
    const islands = pieces.filter(({ island }) => island);
    this.wide = [
      ...sortInRows(openings.map((polygon) => areaPart('opening', polygon))),
      ...sortInRows(islands.map(({ polygon, label }) => areaPart('island', polygon, label))),
    ];
    this.narrow = [
      ...sortInRows(thinMaterial.filter(isNeck).map((part) => thinPart('tie', part))),
      ...sortInRows(thinOpenings.filter(isNeck).map((part) => thinPart('slot', part))),
    ];
    this.all = [...this.wide, ...this.narrow];
  }

  /**
   * The part at a point: a narrow place whose chord passes within `reach` mm, else what the point lies in.
   * @returns undefined on the sheet itself
   */
  at(point: Point, reach: number): SheetPart | undefined {
    let [best, bestDistance]: [SheetPart | undefined, number] = [undefined, reach];
    for (const part of this.narrow) {
      const away = part.thin ? distance(point, nearestBetween(point, part.thin.from, part.thin.to)) : Infinity;
      if (away <= bestDistance) [best, bestDistance] = [part, away];
    }
    return (
      best ??
      this.wide.find(({ box, polygon }) => polygon && boxContains(box, point) && regionContains([polygon], point))
    );
  }
}

/** The whole sheet, where it is pointed at beside all its parts. */
export function wholeSheet({ frame, material, cutLength }: Sheet, at: Point): SheetPart {
  return { kind: 'sheet', box: frame, at, area: areaOf(material), cutLength, polygon: undefined, thin: undefined };
}

/** The place on a polygon's edge that is nearest to a point, if it is within `reach` mm. */
export function nearestOnBorder(polygon: Polygon, point: Point, reach: number): Point | undefined {
  let [best, bestDistance]: [Point | undefined, number] = [undefined, reach];
  for (const ring of ringsOf(polygon)) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const place = nearestBetween(point, { x: x0, y: y0 }, { x: x1, y: y1 });
      const away = distance(place, point);
      if (away <= bestDistance) [best, bestDistance] = [place, away];
    });
  }
  return best;
}

const isNeck = ({ kind }: ThinPlace): boolean => kind === 'neck';

function areaPart(kind: PartKind, polygon: Polygon, at?: Point): SheetPart {
  const box = boxOfPolygon(polygon);
  return {
    kind,
    box,
    polygon,
    thin: undefined,
    area: areaOf(polygon),
    cutLength: perimeterOf(polygon),
    at: at ?? pointInside(polygon.outer, polygon.holes),
  };
}

function thinPart(kind: PartKind, thin: ThinPlace): SheetPart {
  const at = { x: (thin.from.x + thin.to.x) / 2, y: (thin.from.y + thin.to.y) / 2 };
  const box = joinBoxes([thin.from, thin.to].map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
  return { kind, thin, box: growBox(box, 0), at, area: 0, cutLength: 0, polygon: undefined };
}

/** From top to bottom, and from left to right where they begin at the same height. */
function sortInRows(parts: readonly SheetPart[]): SheetPart[] {
  return [...parts].sort(({ box: a }, { box: b }) => a.minY - b.minY || a.minX - b.minX);
}

function nearestBetween(point: Point, from: Point, to: Point): Point {
  return interpolate(from, to, nearestOnEdge(point.x, point.y, from.x, from.y, to.x, to.y));
}
