/**
 * The trade model: one layer's sheet, its openings, what remains of it, and where that is thin. Millimetres, y down.
 */

import type { Reading } from '../config/types';
import type { Drawing, Shape } from '../drawing/types';
import type { Point } from '../geometry/base/curve-types';
import type { Box, Polygon, Region } from '../geometry/base/polygon-types';
import type { ElementNode } from '../markup/tree';
import type { LayerId } from './layer/layer-id';
import type { ThinPlace } from './thin-places';
import type { Tongue } from './tongues';

export interface LayerPaint {
  /** `#rrggbb` */
  readonly paint: string;
  /** Whether `tombolo.json` stated the paint. */
  readonly paintStated?: boolean;
}

/** One colour of the stack: its shapes and how they are read. */
export interface Layer extends LayerPaint {
  readonly id: LayerId;
  /** As the artist calls it; several layers may have the same name. */
  readonly name: string;
  readonly reading: Reading;
  /** Whether the artist stated the reading (config or attribute) or we detected it. */
  readonly readingStated: boolean;
  readonly shapes: readonly Shape[];
  /** The group that is the layer; undefined when the whole file is one layer. */
  readonly element: ElementNode | undefined;
  /** Set where it is one of the paints of its element or file, which were taken apart. */
  readonly byPaint?: true;
  /** The id or name of the layer that it is one painted region with; `paintedRegions` finds it. */
  readonly with?: string;
}

/** A layer, measured at stated scale. */
export interface Sheet extends SheetMeasures {
  readonly layer: Layer;
  readonly drawing: Drawing;
}

/** What is measured of a layer: the same for all layers that draw the same, wherever their text stands. */
export interface SheetMeasures {
  /** The sheet's rectangle: the artwork's frame plus the margin. */
  readonly frame: Box;
  /** What each of the layer's shapes fills, in their order; none where only cut lines are drawn. */
  readonly fills: readonly Region[];
  /** Holes of the sheet as drawn. */
  readonly openings: Region;
  /** Sheet minus openings, as drawn. */
  readonly material: Region;
  /** Components of the material as cut, the frame piece first. */
  readonly pieces: readonly Piece[];
  /** Width that the tool takes beyond the drawn line, in mm; 0 when cut files are compensated. */
  readonly kerf: number;
  /** Places of the material thinner than limits.bridge as cut, of the openings thinner than limits.opening. */
  readonly thinMaterial: readonly ThinPlace[];
  readonly thinOpenings: readonly ThinPlace[];
  /** Parts of the frame piece, as drawn, that are held at a short root only and lift too far. */
  readonly tongues: readonly Tongue[];
  /** Length of all cut lines in mm. */
  readonly cutLength: number;
}

export interface Piece {
  readonly polygon: Polygon;
  /** mm² */
  readonly area: number;
  /** Hangs on nothing. */
  readonly island: boolean;
  /** A point well inside the piece, for labels. */
  readonly label: Point;
}
