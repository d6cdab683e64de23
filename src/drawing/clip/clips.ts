/** Clips put together: boxes recognised, the number of clips within clips bounded. */

import { IDENTITY } from '../../geometry/base/matrix';
import type { Box } from '../../geometry/base/polygon-types';
import type { ElementNode } from '../../markup/tree';
import { MAX_NESTING } from '../budget';
import { DEEP_CLIPS } from '../messages';
import { traceRectangle } from '../outline/basic-shapes';
import { OutlineBuilder } from '../outline/outline-builder';
import type { Problems } from '../problems';
import type { Clip, Subpath } from '../types';

/** A clip of these parts; its `box` is set where it is an upright rectangle. */
export function makeClip(parts: Clip['parts']): Clip {
  const [part, another] = parts;
  const box = part && !another && part.subpaths.length === 1 ? uprightBox(part.subpaths[0]) : undefined;
  return box ? { parts, box } : { parts };
}

/**
 * The clips in force and further ones. Upright boxes are cut with each other, so that viewports within viewports stay
 * one clip; beyond the bound on nesting clips are left out, and that is reported.
 */
export function addClips(
  clips: readonly Clip[],
  further: readonly Clip[],
  element: ElementNode,
  problems: Problems,
): readonly Clip[] {
  const result = [...clips];
  for (const clip of further) {
    const at = clip.box ? result.findIndex(({ box }) => box) : -1;
    const common = at < 0 ? undefined : commonBox(result[at]?.box, clip.box);
    if (common) result[at] = boxClip(common);
    else result.push(clip);
  }
  if (result.length <= MAX_NESTING) return result;
  problems.add('unsupported', 'warning', DEEP_CLIPS, element.startTag);
  return clips;
}

/** Undefined where the boxes have no area in common: both clips then stay, and leave nothing. */
function commonBox(a: Box | undefined, b: Box | undefined): Box | undefined {
  if (!a || !b) return undefined;
  const minX = Math.max(a.minX, b.minX);
  const minY = Math.max(a.minY, b.minY);
  const maxX = Math.min(a.maxX, b.maxX);
  const maxY = Math.min(a.maxY, b.maxY);
  return minX < maxX && minY < maxY ? { minX, minY, maxX, maxY } : undefined;
}

function boxClip(box: Box): Clip {
  const { minX, minY, maxX, maxY } = box;
  const builder = new OutlineBuilder(IDENTITY);
  const rectangle = { x: minX, y: minY, width: maxX - minX, height: maxY - minY, radiusX: 0, radiusY: 0 };
  traceRectangle(rectangle, { from: 0, to: 0 }, builder);
  return { parts: [{ subpaths: builder.done(), fillRule: 'nonzero' }], box };
}

/** Four lines along the axes that come back to their start. */
function uprightBox(subpath: Subpath | undefined): Box | undefined {
  if (subpath?.curves.length !== 4) return undefined;
  let flat = 0;
  for (const { kind, start, end } of subpath.curves) {
    if (kind !== 'line') return undefined;
    if (start.y === end.y && start.x !== end.x) flat += 1;
    else if (start.x !== end.x || start.y === end.y) return undefined;
  }
  const [first, second, third, last] = subpath.curves;
  if (flat !== 2 || !first || !second || !third || !last) return undefined;
  if (last.end.x !== first.start.x || last.end.y !== first.start.y) return undefined;
  const [a, c] = [first.start, second.end];
  const flatAlike = (first.start.y === first.end.y) === (third.start.y === third.end.y);
  if (third.end.x !== last.start.x || !flatAlike) return undefined;
  return { minX: Math.min(a.x, c.x), minY: Math.min(a.y, c.y), maxX: Math.max(a.x, c.x), maxY: Math.max(a.y, c.y) };
}
