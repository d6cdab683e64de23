/** Widens a thin part of an opening along its course: the outlines that bound it move aside, and stay what they are. */

import type { Shape, Subpath } from '../../drawing/types';
import { invert, maxScale } from '../../geometry/base/matrix';
import { boxesTouch } from '../../geometry/base/ring';
import { DRAWN_ALIKE, NECK_MARGIN } from '../../geometry/base/tolerances';
import { boundsOf } from '../../geometry/curve/index';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { elementGeometry } from '../element/element-geometry';
import type { EditResult } from '../element/result';
import { pathSource } from '../path/path-source';
import { decimalsFor } from '../path/precision';
import { rewriteCommands } from '../path/rewrite-commands';
import { displaceOutlines } from './displace-outline';
import { type Bank, GivingBoundary } from './give-way';

/** mm beyond the width asked for: points are written to the 10 µm, and curves are fitted. */
export const WRITING_ROOM = DRAWN_ALIKE + NECK_MARGIN;

/**
 * @param width mm, as drawn
 * @param bank what gives way where two banks face each other; the same as for both where there are no two
 */
export function widenOpening(sheet: Sheet, part: ThinPlace, width: number, bank: Bank): EditResult {
  const boundary = new GivingBoundary(sheet, part, width + WRITING_ROOM);
  if (bank !== 'both' && !boundary.hasBanks) return { refusal: 'It has no two sides.' };
  const edits: TextEdit[] = [];
  for (const shape of sheet.layer.shapes) {
    const outline = outlineOf(sheet, shape);
    if (!outline.some(({ curves }) => curves.some((curve) => boxesTouch(boundsOf(curve), boundary.extent)))) continue;
    const own = displaceShape(sheet, shape, outline, { boundary, bank, width: width + WRITING_ROOM });
    if (typeof own === 'string') return { refusal: own };
    edits.push(...own);
  }
  return edits.length > 0 ? { edits } : { refusal: 'None of the outlines beside it can be moved.' };
}

/** What of a shape bounds openings and can be moved: a line's own outline is made by its width. */
export function outlineOf(
  { layer: { reading } }: Sheet,
  { part, subpaths, centreline = [] }: Shape,
): readonly Subpath[] {
  if (reading === 'outlines') return centreline;
  return part === 'fill' ? subpaths : [];
}

function displaceShape(
  { drawing }: Sheet,
  shape: Shape,
  outline: readonly Subpath[],
  how: { readonly boundary: GivingBoundary; readonly bank: Bank; readonly width: number },
): readonly TextEdit[] | string {
  const toUser = invert(shape.toMm);
  if (!toUser) return [];
  const decimals = Math.max(0, decimalsFor(maxScale(shape.toMm)) - 1);
  const geometry = elementGeometry(drawing.document, shape, outline, decimals + 2);
  if (typeof geometry === 'string') return geometry;
  const source = pathSource(geometry.data, { decimals, numbers: geometry.numbers }, shape.part === 'fill');
  const redrawn = displaceOutlines(source, { ...how, toMm: shape.toMm, toUser });
  if (!redrawn) return 'The outline is too crooked there to be moved aside.';
  if (redrawn.starts.size === 0 && redrawn.curves.size === 0) return [];
  if (drawing.shapes.some((other) => other !== shape && other.element === shape.element && other.part === shape.part)) {
    return `The <${shape.element.name}> is drawn in several places; change it by hand.`;
  }
  return geometry.editsFor(rewriteCommands(source, redrawn));
}
