/** How far a sheet has slipped from its register: shift and turn. */
import type { Matrix } from '../../geometry/base/curve-types';
import { multiply, rotation, translation } from '../../geometry/base/matrix';
import type { Box } from '../../geometry/base/polygon-types';

export interface Slip {
  /** mm to the right and down */
  readonly x: number;
  readonly y: number;
  /** Degrees, clockwise, about the middle of the sheet. */
  readonly turn: number;
}

export const IN_REGISTER: Slip = { x: 0, y: 0, turn: 0 };

/** Farthest that the sliders go, in mm and degrees; a drag goes as far as it likes. */
export const MAX_SHIFT = 5;
export const MAX_TURN = 5;

export const isSlipped = ({ x, y, turn }: Slip): boolean => x !== 0 || y !== 0 || turn !== 0;

/** From where the sheet should lie to where it lies. */
export function slipMatrix({ x, y, turn }: Slip, sheet: Box): Matrix {
  const [middleX, middleY] = [(sheet.minX + sheet.maxX) / 2, (sheet.minY + sheet.maxY) / 2];
  const turned = multiply(rotation((turn * Math.PI) / 180), translation(-middleX, -middleY));
  return multiply(translation(middleX + x, middleY + y), turned);
}

/** Hundredths of a millimetre and of a degree are enough, and make short figures. */
export function roundedSlip({ x, y, turn }: Slip): Slip {
  const round = (value: number) => Math.round(value * 100) / 100 + 0;
  return { x: round(x), y: round(y), turn: round(turn) };
}
