/** The drawings that show where loose pieces are laid: at true size where the paper has room, so that a sheet can be laid on them. */
import type { Box } from '../../geometry/base/polygon-types';
import type { Positions } from './job';

/** mm that a page of A4 has for one, in its borders and under its heading. */
const POSITIONS_ROOM = { width: 186, height: 255 } as const;

/** So many times smaller than the sheet: round numbers, by which one can measure. */
const REDUCTIONS = [1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10, 15, 20, 25, 50, 100];

export interface PlacedPositions {
  /** mm on paper for each mm of the sheet. */
  readonly scale: number;
  readonly heading: string;
}

export function placePositions({ frame, number, name }: Positions): PlacedPositions {
  const reduction = reductionFor(frame);
  const size = reduction === 1 ? 'true size' : `1 : ${Number(reduction.toFixed(1))}`;
  return { scale: 1 / reduction, heading: `Loose pieces of sheet ${number}, ${name}: ${size}` };
}

function reductionFor({ minX, minY, maxX, maxY }: Box): number {
  const needed = Math.max((maxX - minX) / POSITIONS_ROOM.width, (maxY - minY) / POSITIONS_ROOM.height);
  return REDUCTIONS.find((each) => each >= needed) ?? needed;
}
