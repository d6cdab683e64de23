/** From a layer's shapes to its sheet: openings, material, pieces and thin places. Millimetres throughout. */

import { kerfOf, limitsOf, materialOf } from '../config/limits';
import type { Config, Reading } from '../config/types';
import type { Drawing } from '../drawing/types';
import type { Box, Polygon, Region } from '../geometry/base/polygon-types';
import { signedArea } from '../geometry/base/ring';
import { resultOf } from '../geometry/boolean/cluster-cache';
import { clipToBox, complementInBox, perimeterOf } from '../geometry/boolean/index';
import { reuseUnchanged } from '../geometry/polygon/diff';
import { findProtrusions } from '../geometry/protrusion/find';
import { sheetAsCut } from './as-cut';
import { fillShapes } from './layer/fill-shapes';
import { mainPaint, type ShapeGroup } from './layer/layers';
import { openingsWithin } from './layer/outlines';
import { detectReading, outlinesOf, statedReading } from './layer/reading';
import { sameArtwork } from './layer/same-artwork';
import { maxOverhang } from './lift';
import { findThinPlaces } from './thin-places';
import type { Layer, Sheet } from './types';

/**
 * Measures one layer of a drawing.
 * @param earlier a sheet measured under the same configuration; what did not change is not measured again
 */
export function measureSheet(drawing: Drawing, group: ShapeGroup, config: Config, earlier?: Sheet): Sheet {
  if (earlier && isUnchanged(drawing, group, config, earlier)) {
    const layer = { ...earlier.layer, id: group.id, name: group.name, element: group.element, shapes: group.shapes };
    return { ...earlier, layer, drawing };
  }
  const frame = frameOf(drawing, config.margin);
  const filled = lazy(() => fillShapes(group.shapes, earlier));
  const layer = readLayer(drawing, group, config, () => resultOf(filled().union));
  const openings = reuseUnchanged(
    openingsOf(layer, frame, () => resultOf(filled().union)),
    earlier?.openings ?? [],
  );
  const material = reuseUnchanged(complementInBox(openings, frame), earlier?.material ?? []);
  const kerf = kerfOf(config);
  const limits = limitsOf(config);
  const { pieces, parted, widened } = sheetAsCut({ openings, material, frame, kerf }, earlier);
  return {
    layer,
    drawing,
    frame,
    openings,
    material,
    kerf,
    pieces,
    thinMaterial: findThinPlaces(
      material,
      limits.bridge,
      kerf,
      earlier && { region: earlier.material, places: earlier.thinMaterial },
    ),
    thinOpenings: findThinPlaces(
      openings,
      limits.opening,
      -kerf,
      earlier && { region: earlier.openings, places: earlier.thinOpenings },
    ),
    tongues: findProtrusions(framePolygon(material), maxOverhang(materialOf(config))),
    cutLength: openings.reduce((sum, polygon) => sum + perimeterOf(polygon), 0),
    cache: { ...(filled.made ?? { fills: [], union: [] }), parted, widened },
  };
}

function isUnchanged(drawing: Drawing, group: ShapeGroup, config: Config, earlier: Sheet): boolean {
  const stated = readingSaidFor(drawing, group, config);
  return (
    drawing.width === earlier.drawing.width &&
    drawing.height === earlier.drawing.height &&
    (stated !== undefined) === earlier.layer.readingStated &&
    (stated ?? earlier.layer.reading) === earlier.layer.reading &&
    sameArtwork(group.shapes, earlier.layer.shapes)
  );
}

function readingSaidFor(drawing: Drawing, group: ShapeGroup, config: Config): Reading | undefined {
  return statedReading([group.element, drawing.document.root]) ?? config.reading;
}

function frameOf(drawing: Drawing, margin: number): Box {
  return { minX: -margin, minY: -margin, maxX: drawing.width + margin, maxY: drawing.height + margin };
}

function readLayer(drawing: Drawing, group: ShapeGroup, config: Config, filled: () => Region): Layer {
  const stated = readingSaidFor(drawing, group, config);
  const artwork = frameOf(drawing, 0);
  return {
    id: group.id,
    name: group.name,
    element: group.element,
    shapes: group.shapes,
    paint: mainPaint(group.shapes),
    reading: stated ?? detectReading(group.shapes, artwork, filled),
    readingStated: stated !== undefined,
  };
}

function openingsOf(layer: Layer, frame: Box, filled: () => Region): Region {
  if (layer.reading === 'outlines') return openingsWithin(outlinesOf(layer.shapes), frame);
  return layer.reading === 'sheet' ? complementInBox(filled(), frame) : clipToBox(filled(), frame);
}

/** Tongues of islands are of no interest: they fall out whole. */
function framePolygon(material: Region): Region {
  const size = ({ outer }: Polygon) => signedArea(outer);
  const [first, ...others] = material;
  return first ? [others.reduce((largest, each) => (size(each) > size(largest) ? each : largest), first)] : [];
}

interface Lazy<T> {
  (): T;
  /** Undefined until it is first asked for. */
  made?: T;
}

function lazy<T>(compute: () => T): Lazy<T> {
  const ask: Lazy<T> = () => (ask.made ??= compute());
  return ask;
}
