/** The ways in which a colour can be extended, the one that changes the drawing least first. */

import type { Shape } from '../../../drawing/types';
import { drawBeside, shapeBeside } from '../../../edits/element/draw-beside';
import type { EditResult } from '../../../edits/element/result';
import { extendOpenings } from '../../../edits/opening/extend-openings';
import { spliceRegion } from '../../../edits/opening/splice/splice-region';
import type { Point } from '../../../geometry/base/curve-types';
import type { Region } from '../../../geometry/base/polygon-types';
import { joinBoxes } from '../../../geometry/base/ring';
import { PLAINLY_BESIDE } from '../../../geometry/base/tolerances';
import { boxOfPolygon, intersection, offset, union } from '../../../geometry/boolean/index';
import { colourOf } from '../../../sheet/layer/paint-order';
import type { Sheet } from '../../../sheet/types';
import { firstAbove, shapesUnder } from './drawn-under';
import type { Gain, LaterPaintIn } from './region';

/** mm: where else the sheet may change, for curves that are written down and flattened again. */
const ROOM = PLAINLY_BESIDE;

/** In rooms: so far a new course may begin before the region, in a node of the outline. */
const TO_NODE = 3;

export interface Extension {
  readonly sheet: Sheet;
  readonly gain: Gain;
  readonly paintIn: LaterPaintIn;
  /** Of later layers. */
  readonly above: readonly Shape[];
  /** On the edges that face each other. */
  readonly places: readonly Point[];
  /** mm */
  readonly slip: number;
  /** mm beyond the colour's edge. */
  readonly reach: number;
}

/** A change that is to be proven. */
export interface Way {
  readonly outcome: EditResult;
  /** Where the openings may change. */
  readonly within: Region;
}

/** Moves the colour's own outlines, or leads them round what it gains, whichever takes less text. */
export function byOutlines({ sheet, gain, paintIn, above, slip, reach }: Extension): Way[] {
  const shapes = shapesUnder(sheet, above, gain.added);
  const movable = { ...sheet, layer: { ...sheet.layer, shapes } };
  // Outlines that turn there go a little farther, under later colours.
  const around = offset(gain.joined, slip);
  const hidden = intersection(around, paintIn(joinBoxes(around.map(boxOfPolygon))));
  const moved = {
    outcome: extendOpenings(movable, gain.added, reach),
    within: union([offset(gain.joined, ROOM), hidden]),
  };
  const [led, exactly] = [true, false].map((atNodes) => ({
    outcome: spliceRegion(movable, gain.joined, atNodes),
    within: offset(gain.joined, TO_NODE * ROOM),
  })) as [Way, Way];
  const isShorter = growthOf(led.outcome) < growthOf(moved.outcome);
  return [...(isShorter ? [led, moved] : [moved, led]), exactly];
}

/** Characters by which a text becomes longer. */
function growthOf(outcome: EditResult): number {
  if ('refusal' in outcome) return Infinity;
  return outcome.edits.reduce((sum, { span, text }) => sum + text.length - (span.to - span.from), 0);
}

/** Adds a shape: beside one of the colour's own, or where it must be drawn to lie under the others. */
export function byNewShape({ sheet, gain, above, places }: Extension): Way[] {
  const { drawing, layer } = sheet;
  const within = offset(gain.joined, ROOM);
  const model = shapeBeside({ layer: { ...layer, shapes: shapesUnder(sheet, above, gain.added) } }, places);
  const first = firstAbove(sheet, above, gain.added);
  const own = layer.shapes[0];
  return [
    ...(model ? [{ outcome: { edits: drawBeside(drawing, model, gain.joined) }, within }] : []),
    ...(first && own ? [{ outcome: { edits: drawBeside(drawing, first, gain.joined, colourOf(own)) }, within }] : []),
  ];
}
