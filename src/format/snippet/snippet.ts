/** The place of a finding drawn small, for terminals: as plain data, since it may come from another thread or an earlier run. */
import type { Finding } from '../../checks/finding';
import type { Point } from '../../geometry/base/curve-types';
import type { Box, Region } from '../../geometry/base/polygon-types';
import { boxOfRing } from '../../geometry/base/ring';
import type { Sheet } from '../../sheet/types';
import { brailleOf, type DotWindow, dotsOf, hatched, joined } from './dots';

export interface Snippet {
  /** Braille, from top to bottom: what is cut out is filled; a loose piece, or a neighbour's colour, is hatched. */
  readonly lines: readonly string[];
  /** Of the place, from the left and from the top, in characters. */
  readonly column: number;
  readonly line: number;
  /** How wide it is on the sheet, in mm. */
  readonly width: number;
}

/** Dots: 26 characters by 6. */
const COLUMNS = 52;
const ROWS = 24;

/** How many dots the limit of a width is drawn with: a bridge half as wide as it must be is then still seen. */
const DOTS_OF_LIMIT = 5;

/** mm from dot to dot, where nothing says how large the place is. */
const PLAIN_STEP = 0.2;

/** How much of the window is taken by what it is drawn for. */
const SHARE = 0.75;

/** Undefined where the finding has no place, or lies on none of the sheets. @param sheets of the finding's file */
export function snippetOf(finding: Finding, sheets: readonly Sheet[]): Snippet | undefined {
  const { at, subject } = finding;
  const sheet =
    sheets.find(({ layer }) => layer.id === finding.layerId) ?? (sheets.length === 1 ? sheets[0] : undefined);
  if (!(at && sheet)) return undefined;
  const place = middleOf(finding, at);
  const window =
    subject?.kind === 'island' ? windowRound(boxOfRing(subject.piece.polygon.outer)) : windowAt(finding, place);
  const drawn = joined(dotsOf(sheet.openings, window), hatched(dotsOf(besideOf(finding), window)));
  return {
    lines: brailleOf(drawn),
    column: cellOf(place.x - window.x, 2 * window.step, COLUMNS / 2),
    line: cellOf(place.y - window.y, 4 * window.step, ROWS / 4),
    width: COLUMNS * window.step,
  };
}

/** The other places of the same file that the finding names, such as the opposite bank. */
function facing({ related }: Finding): Point[] {
  return related.flatMap(({ file, at }) => (file === undefined && at ? [at] : []));
}

/** Between the two sides of a narrow place. */
function middleOf(finding: Finding, at: Point): Point {
  const [other] = finding.measure?.unit === 'mm' ? facing(finding) : [];
  return other ? { x: (at.x + other.x) / 2, y: (at.y + other.y) / 2 } : at;
}

function windowAt(finding: Finding, place: Point): DotWindow {
  const { measure } = finding;
  const other = facing(finding)[0] ?? place;
  const reach = 2 * Math.max(Math.abs(other.x - place.x), 2 * Math.abs(other.y - place.y));
  const least = measure?.unit === 'mm' && measure.limit > 0 ? measure.limit / DOTS_OF_LIMIT : PLAIN_STEP;
  return windowOf(place, Math.max(least, reach / (SHARE * COLUMNS)));
}

function windowRound({ minX, minY, maxX, maxY }: Box): DotWindow {
  const step = Math.max((maxX - minX) / (SHARE * COLUMNS), (maxY - minY) / (SHARE * ROWS));
  return windowOf({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 }, step);
}

const windowOf = ({ x, y }: Point, step: number): DotWindow => ({
  x: x - (step * COLUMNS) / 2,
  y: y - (step * ROWS) / 2,
  step,
  columns: COLUMNS,
  rows: ROWS,
});

/** What is hatched: the piece that is loose, or the openings of the other of two neighbours. */
function besideOf({ subject, layerId }: Finding): Region {
  if (subject?.kind === 'island') return [subject.piece.polygon];
  if (subject?.kind !== 'gap' && subject?.kind !== 'overlap') return [];
  const { earlier, later } = subject;
  return (earlier.sheet.layer.id === layerId ? later : earlier).sheet.openings;
}

const cellOf = (distance: number, size: number, count: number): number =>
  Math.max(0, Math.min(count - 1, Math.floor(distance / size)));
