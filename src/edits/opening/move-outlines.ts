/** Moves aside the outlines of a layer where a boundary gives way; they stay what they are. */

import type { Shape, Subpath } from '../../drawing/types';
import { invert, maxScale } from '../../geometry/base/matrix';
import { boxesTouch } from '../../geometry/base/ring';
import { boundsOf } from '../../geometry/curve/index';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { elementGeometry } from '../element/element-geometry';
import type { EditResult } from '../element/result';
import { pathSource } from '../path/path-source';
import { decimalsFor } from '../path/precision';
import { rewriteCommands } from '../path/rewrite-commands';
import { type Displacement, displaceOutlines } from './displace-outline';

export type OutlineMove = Omit<Displacement, 'toMm' | 'toUser'>;

export function moveOutlines(sheet: Sheet, how: OutlineMove): EditResult {
  const edits: TextEdit[] = [];
  for (const shape of sheet.layer.shapes) {
    const outline = outlineOf(sheet, shape);
    const { extent } = how.boundary;
    if (!outline.some(({ curves }) => curves.some((curve) => boxesTouch(boundsOf(curve), extent)))) continue;
    const own = displaceShape(sheet, shape, outline, how);
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
  how: OutlineMove,
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
