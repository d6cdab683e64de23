/** Clips put together: boxes recognised, the number of clips within clips bounded. */
import type { Box } from '../geometry/region';
import type { ElementNode } from '../markup/tree';
import { MAX_NESTING } from './budget';
import type { Clip, Subpath } from './drawing';
import type { Problems } from './problems';

/** A clip of these parts; its `box` is set where it is an upright rectangle. */
export function makeClip(parts: Clip['parts']): Clip {
  const [part, another] = parts;
  const box = part && !another && part.subpaths.length === 1 ? uprightBox(part.subpaths[0]) : undefined;
  return box ? { parts, box } : { parts };
}

/** The clips in force and one or more further ones; beyond the bound they are left out, and that is reported. */
export function addClips(
  clips: readonly Clip[], further: readonly Clip[], element: ElementNode, problems: Problems,
): readonly Clip[] {
  if (clips.length + further.length <= MAX_NESTING) return [...clips, ...further];
  const message = `More than ${MAX_NESTING} clips within each other are not followed; this one is not applied.`;
  problems.add('unsupported', 'warning', message, element.startTag);
  return clips;
}

/** Four lines along the axes that come back to their start. */
function uprightBox(subpath: Subpath | undefined): Box | undefined {
  if (!subpath || subpath.curves.length !== 4) return undefined;
  let flat = 0;
  for (const { kind, start, end } of subpath.curves) {
    if (kind !== 'line') return undefined;
    if (start.y === end.y && start.x !== end.x) flat++;
    else if (start.x !== end.x || start.y === end.y) return undefined;
  }
  const [first, second, third, last] = subpath.curves;
  if (flat !== 2 || !first || !second || !third || !last) return undefined;
  if (last.end.x !== first.start.x || last.end.y !== first.start.y) return undefined;
  const [a, c] = [first.start, second.end];
  if (third.end.x !== last.start.x || (first.start.y === first.end.y) !== (third.start.y === third.end.y)) return undefined;
  return { minX: Math.min(a.x, c.x), minY: Math.min(a.y, c.y), maxX: Math.max(a.x, c.x), maxY: Math.max(a.y, c.y) };
}
