/** From a layer's shapes to its sheet: openings, material, pieces and thin places. Millimetres throughout. */

import { kerfOf, limitsOf } from '../config/limits';
import type { Config, Reading } from '../config/types';
import type { Drawing, Shape } from '../drawing/types';
import type { Box, Region } from '../geometry/base/polygon-types';
import { growBox } from '../geometry/base/ring';
import { resultOf } from '../geometry/boolean/cluster-cache';
import { clipToBox, complementInBox, perimeterOf } from '../geometry/boolean/index';
import { reuseUnchanged } from '../geometry/polygon/diff';
import { type CutMemory, sheetAsCut } from './as-cut';
import { bendingOf } from './deflection';
import { artworkKey } from './layer/artwork-key';
import { type FilledShapes, type FillOf, fillShapes, NOTHING_FILLED } from './layer/fill-shapes';
import { mainPaint, type ShapeGroup } from './layer/layers';
import { openingsWithin } from './layer/outlines';
import { statedPartner } from './layer/partner';
import { detectReading, outlinesOf, statedReading } from './layer/reading';
import { sourcesOfShapes } from './source-index';
import { findThinPlaces } from './thin-places';
import { findTongues } from './tongues';
import { neckedOnCurves } from './true-crossings';
import type { Layer, LayerPaint, Sheet, SheetMeasures } from './types';

/** All that the measures of a layer depend on, besides the configuration. */
export interface Artwork {
  readonly shapes: readonly Shape[];
  /** What stands for each of the shapes: see `artworkKey`. */
  readonly shapeKeys: Float64Array;
  /** The artwork's frame in mm, its origin at 0, 0. */
  readonly frame: Box;
  /** As the artist stated it, in the text or the configuration. */
  readonly reading: Reading | undefined;
  /** Whether its thin lines are known to be painted. */
  readonly painted: boolean;
}

/** A layer's measures, with what a later measuring of the same layer can take over. */
export interface MeasuredArtwork {
  /** As stated, else as detected. */
  readonly reading: Reading;
  readonly measures: SheetMeasures;
  readonly memory: MeasureMemory;
}

interface MeasureMemory {
  /** Nothing where it was not asked what the shapes fill. */
  readonly filled: FilledShapes;
  readonly cut: CutMemory;
}

/** Measures one layer of a drawing, which knows nothing of what was measured before. */
export function measureSheet(drawing: Drawing, group: ShapeGroup, config: Config): Sheet {
  const artwork = artworkOf(drawing, group, config, artworkKey(group.shapes).shapes);
  return sheetOf(drawing, group, artwork, measureArtwork(artwork, config), { paint: mainPaint(group.shapes) });
}

/** @param shapeKeys what stands for each of the group's shapes */
export function artworkOf(drawing: Drawing, group: ShapeGroup, config: Config, shapeKeys: Float64Array): Artwork {
  const { shapes, element, painted = false } = group;
  const frame = { minX: 0, minY: 0, maxX: drawing.width, maxY: drawing.height };
  const reading = statedReading([element, drawing.document.root]) ?? config.reading;
  return { shapes, shapeKeys, frame, reading, painted };
}

/** The sheet of a layer: its measures, and where it stands in the text. */
export function sheetOf(
  drawing: Drawing,
  { id, name, element, shapes, byPaint, with: named }: ShapeGroup,
  artwork: Artwork,
  { reading, measures }: MeasuredArtwork,
  paint: LayerPaint,
): Sheet {
  const readingStated = artwork.reading !== undefined;
  const partner = named ?? statedPartner(element, drawing);
  const layer: Layer = {
    id,
    name,
    element,
    shapes,
    ...paint,
    reading,
    readingStated,
    ...(byPaint && { byPaint }),
    ...(partner !== undefined && { with: partner }),
  };
  return { layer, drawing, ...measures };
}

/**
 * Measures what one layer draws.
 * @param previous of the same layer before an edit, measured under the same configuration; what did not change is not
 * measured again
 * @param fillOf what one of its shapes fills, where that may be known
 */
export function measureArtwork(
  artwork: Artwork,
  config: Config,
  previous?: MeasuredArtwork,
  fillOf?: FillOf,
): MeasuredArtwork {
  const frame = growBox(artwork.frame, config.margin);
  const filled = lazy(() => fillShapes(artwork.shapes, artwork.shapeKeys, previous?.memory.filled, fillOf));
  const union = (): Region => resultOf(filled().union);
  const reading = artwork.reading ?? detectReading(artwork.shapes, artwork.frame, union, artwork.painted);
  const before = previous?.measures;
  // Keys tell which shapes have changed, but not which of the openings that these make together, nor of the holes that
  // those leave in the material: the overlay makes new objects for all that it touches, the same to the last digit.
  const openings = reuseUnchanged(openingsOf(artwork.shapes, reading, frame, union), before?.openings ?? []);
  const material = reuseUnchanged(complementInBox(openings, frame), before?.material ?? []);
  const kerf = kerfOf(config);
  const limits = limitsOf(config);
  const sources = () => sourcesOfShapes(artwork.shapes, reading);
  const { pieces, memory: cut } = sheetAsCut(
    { openings, material, frame, kerf },
    previous && { pieces: previous.measures.pieces, memory: previous.memory.cut },
  );
  const measures: SheetMeasures = {
    frame,
    fills: filled.made?.fills ?? [],
    openings,
    material,
    kerf,
    pieces,
    thinMaterial: neckedOnCurves(
      findThinPlaces(material, limits.bridge, kerf, before && { region: before.material, places: before.thinMaterial }),
      limits.bridge + kerf,
      sources,
    ),
    thinOpenings: neckedOnCurves(
      findThinPlaces(
        openings,
        limits.opening,
        -kerf,
        before && { region: before.openings, places: before.thinOpenings },
      ),
      limits.opening - kerf,
      sources,
    ),
    tongues: findTongues(material, bendingOf(config)),
    cutLength: openings.reduce((sum, polygon) => sum + perimeterOf(polygon), 0),
  };
  return { reading, measures, memory: { filled: filled.made ?? NOTHING_FILLED, cut } };
}

function openingsOf(shapes: readonly Shape[], reading: Reading, frame: Box, filled: () => Region): Region {
  if (reading === 'outlines') return openingsWithin(outlinesOf(shapes), frame);
  return reading === 'sheet' ? complementInBox(filled(), frame) : clipToBox(filled(), frame);
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
