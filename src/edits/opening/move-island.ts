/** Moves a small island aside, so that the slot beside it becomes wide enough: it keeps its form. */
import { translation } from '../../geometry/base/matrix';
import { boxOfRing } from '../../geometry/base/ring';
import { normalise, scale, subtract } from '../../geometry/base/vector';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { type EditResult, mergeResults } from '../element/result';
import { makersOf } from './enlarge-small';
import { transformSubpaths } from './transform-subpaths';
import { WRITING_ROOM } from './widen-opening';

/** In widths: larger islands are part of the picture, and stay where they are. */
const SMALL = 8;

/** @param width mm, as drawn */
export function moveIsland(sheet: Sheet, part: ThinPlace, width: number): EditResult {
  const opening = sheet.openings[part.polygon];
  const across = normalise(subtract(part.to, part.from));
  for (const hole of opening?.holes ?? []) {
    const box = boxOfRing(hole);
    if (Math.max(box.maxX - box.minX, box.maxY - box.minY) > SMALL * width) continue;
    const touches = ({ x, y }: ThinPlace['from']) =>
      hole.some((_, i) => i % 2 === 0 && Math.hypot((hole[i] ?? 0) - x, (hole[i + 1] ?? 0) - y) < width / 4);
    const [from, to] = [touches(part.from), touches(part.to)];
    if (from === to || !across) continue;
    const { x, y } = scale(across, (to ? 1 : -1) * (width + WRITING_ROOM / 2 - part.drawnWidth));
    const makers = makersOf(sheet, box);
    if (makers.length === 0) continue;
    return mergeResults(
      makers.map(({ shape, subpaths }) => transformSubpaths(sheet, shape, subpaths, translation(x, y))),
    );
  }
  return { refusal: 'No small island lies beside it.' };
}
