/** The numbers of loose pieces that are kept: on the piece where it has room for it, else beside it with a line. Sheet mm. */
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { inscribedDisc } from '../../geometry/polygon/inscribed-circle';
import type { Piece, Sheet } from '../../sheet/types';
import { isFree } from './label';
import { strokesOfText, widthOfText } from './letters';

/** mm: letters that a pen draws legibly, and that are not larger than they need to be. Common practice, no source. */
const [SMALLEST, LARGEST] = [1, 3] as const;

/** mm round a number on its piece: so much stays of it on every side. */
const RIM = 0.3;

/** mm: how far from its piece a number may stand, and how finely places are tried. */
const [FARTHEST, STEP] = [25, 1] as const;
const DIRECTIONS = 16;

/** @returns lines for a pen; undefined where there is no room for the number near the piece */
export function pieceNumber(sheet: Sheet, label: string, piece: Piece, clearance: number): Point[][] | undefined {
  const { centre, radius } = inscribedDisc(piece.polygon, 0.05);
  // A box as wide as the number is for letters 1 mm high has half of that as its diagonal's share.
  const height = (2 * (radius - RIM)) / Math.hypot(widthOfText(label, 1), 1);
  if (height >= SMALLEST) return written(label, centre, Math.min(height, LARGEST));
  const box = placeBeside(sheet, centre, widthOfText(label, SMALLEST) + 2 * RIM, SMALLEST + 2 * RIM, clearance);
  if (!box) return undefined;
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return [...written(label, middle, SMALLEST), [nearestIn(box, centre), centre]];
}

function written(label: string, middle: Point, height: number): Point[][] {
  return strokesOfText(label, { x: middle.x - widthOfText(label, height) / 2, y: middle.y - height / 2 }, height);
}

/** The nearest free place round a point, on the frame piece. */
function placeBeside(sheet: Sheet, { x, y }: Point, width: number, height: number, clearance: number): Box | undefined {
  const { minX, minY, maxX, maxY } = sheet.frame;
  for (let reach = STEP; reach <= FARTHEST; reach += STEP) {
    for (let direction = 0; direction < DIRECTIONS; direction += 1) {
      const angle = (2 * Math.PI * direction) / DIRECTIONS;
      const [left, top] = [x + reach * Math.cos(angle) - width / 2, y + reach * Math.sin(angle) - height / 2];
      const box = { minX: left, minY: top, maxX: left + width, maxY: top + height };
      const isWithin = box.minX > minX && box.maxX < maxX && box.minY > minY && box.maxY < maxY;
      if (isWithin && isFree(sheet, box, clearance)) return box;
    }
  }
  return undefined;
}

function nearestIn({ minX, minY, maxX, maxY }: Box, { x, y }: Point): Point {
  return { x: Math.min(Math.max(x, minX), maxX), y: Math.min(Math.max(y, minY), maxY) };
}
