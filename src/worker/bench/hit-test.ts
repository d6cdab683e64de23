/** From a place of the picture to the part that lies there, its measures and its text. */
import { contourSpan, layerSpan, spanAt } from '../../checks/places';
import type { Drawing } from '../../drawing/types';
import type { Point } from '../../geometry/base/curve-types';
import { boxContains } from '../../geometry/base/ring';
import { distance } from '../../geometry/base/vector';
import type { LayerPlace, PartAtParams, PickedPart, SnapPoint } from '../../protocol/parts';
import type { LayerId } from '../../sheet/layer/layer-id';
import { sourcesOf } from '../../sheet/source-index';
import type { Sheet } from '../../sheet/types';
import type { Span } from '../../text/text';
import { nearestOnBorder, type SheetPart, SheetParts, wholeSheet } from './hit-targets';
import { regionPath } from './preview-model';

/** A layer of the stack and the document that it is cut from. */
export interface PlacedSheet {
  readonly sheet: Sheet;
  readonly uri: string;
  readonly version: number;
}

/** All layers of a stack. */
export type PlacedLayers = ReadonlyMap<LayerId, PlacedSheet>;

/** What has been looked up of the sheets that are shown. Sheets that did not change between two checks keep theirs. */
export class PartFinder {
  private readonly parts = new WeakMap<Sheet, SheetParts>();

  /** The first of the places at which a layer has a part. */
  partAt(layers: PlacedLayers, { places, reach, sheets }: Omit<PartAtParams, 'uri'>): PickedPart | undefined {
    for (const { layer, point } of places) {
      const placed = layers.get(layer);
      const part = placed && this.partsOf(placed.sheet).at(point, reach);
      if (part) return this.picked(placed, layer, part, { point, reach });
    }
    const isOn = ({ layer, point }: LayerPlace) => boxContains(layers.get(layer)?.sheet.frame ?? NOWHERE, point);
    const under = sheets ? places.find(isOn) : undefined;
    const placed = under && layers.get(under.layer);
    return placed && this.picked(placed, under.layer, wholeSheet(placed.sheet, under.point));
  }

  /** @param number any whole number: after the last part comes the first again */
  part(layers: PlacedLayers, layer: LayerId, number: number): PickedPart | undefined {
    const placed = layers.get(layer);
    const all = placed ? this.partsOf(placed.sheet).all : [];
    const part = all[((number % all.length) + all.length) % all.length];
    return placed && part && this.picked(placed, layer, part);
  }

  private picked(
    { sheet, uri, version }: PlacedSheet,
    layer: LayerId,
    part: SheetPart,
    near?: { point: Point; reach: number },
  ): PickedPart {
    const { kind, box, at, area, cutLength, polygon, thin } = part;
    const { all } = this.partsOf(sheet);
    const number = all.indexOf(part);
    const { from, to } = this.spanOf(sheet, part, near);
    return {
      kind,
      layer,
      number: Math.max(number, 0),
      count: number < 0 ? 0 : all.length,
      at,
      area,
      cutLength,
      outline: polygon ? regionPath([polygon]) : thin ? linePath(thin.from, thin.to) : '',
      width: box.maxX - box.minX,
      height: box.maxY - box.minY,
      across: thin?.cutWidth,
      uri,
      version,
      from,
      to,
    };
  }

  private spanOf(sheet: Sheet, { polygon, thin }: SheetPart, near?: { point: Point; reach: number }): Span {
    const stencil = { drawing: sheet.drawing, sources: sourcesOf };
    if (thin) return spanAt(stencil, sheet, thin.from, thin.to);
    if (!polygon) return layerSpan(stencil, sheet);
    const edge = near && nearestOnBorder(polygon, near.point, near.reach);
    const source = edge && sourcesOf(sheet).at(edge);
    return source?.span ?? contourSpan(stencil, sheet, polygon.outer);
  }

  private partsOf(sheet: Sheet): SheetParts {
    const parts = this.parts.get(sheet) ?? new SheetParts(sheet);
    this.parts.set(sheet, parts);
    return parts;
  }
}

const NOWHERE = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** A point of the artist's outlines within reach, else a place on an edge of the openings. */
export function snapAt(layers: PlacedLayers, places: readonly LayerPlace[], reach: number): SnapPoint | undefined {
  return (
    nearest(places, reach, 'point', ({ layer, point }, least) => {
      const sheet = layers.get(layer)?.sheet;
      return sheet && nearestEnd(sheet.layer.shapes, sheet.layer.reading === 'outlines', point, least);
    }) ??
    nearest(places, reach, 'edge', ({ layer, point }, least) => nearestEdge(layers.get(layer)?.sheet, point, least))
  );
}

function nearest(
  places: readonly LayerPlace[],
  reach: number,
  kind: SnapPoint['kind'],
  find: (place: LayerPlace, reach: number) => Point | undefined,
): SnapPoint | undefined {
  let [best, least]: [SnapPoint | undefined, number] = [undefined, reach];
  for (const place of places) {
    const found = find(place, least);
    if (!found) continue;
    best = { layer: place.layer, point: found, kind };
    least = distance(found, place.point);
  }
  return best;
}

function nearestEnd(shapes: Drawing['shapes'], outlines: boolean, point: Point, reach: number): Point | undefined {
  let [best, least]: [Point | undefined, number] = [undefined, reach];
  const look = (end: Point) => {
    const far = distance(end, point);
    if (far <= least) [best, least] = [end, far];
  };
  for (const { subpaths, centreline } of shapes) {
    for (const { curves } of (outlines ? centreline : undefined) ?? subpaths) {
      for (const { start, end } of curves) {
        look(start);
        look(end);
      }
    }
  }
  return best;
}

function nearestEdge(sheet: Sheet | undefined, point: Point, reach: number): Point | undefined {
  let [best, least]: [Point | undefined, number] = [undefined, reach];
  for (const polygon of sheet?.openings ?? []) {
    const found = nearestOnBorder(polygon, point, least);
    if (found) [best, least] = [found, distance(found, point)];
  }
  return best;
}

const linePath = (from: Point, to: Point): string => `M${from.x} ${from.y}L${to.x} ${to.y}`;
