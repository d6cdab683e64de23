/** From a line and its stroke properties to the area that the stroke paints. */
import type { Matrix } from '../../geometry/base/curve-types';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import type { Budget } from '../budget';
import type { ComputedStyle } from '../style/computed-style';
import type { LineJoin } from '../style/properties';
import type { Dash, Subpath } from '../types';
import { toUserUnits, type ViewportSize } from '../viewport/units';
import { type DashPattern, dashCount, dashLine, measureLine, type PenLine } from './dashes';
import { PolygonSink } from './figures';
import { outlineContour } from './outline-pieces';
import { makeHostPen, makePen, type Pen } from './pen';
import { piecesOfLine, toPenUnits } from './pieces';
import { strokedChain } from './stroked-chain';

export interface StrokeContext {
  readonly style: ComputedStyle;
  readonly viewport: ViewportSize;
  /** From the element's user units to sheet mm. */
  readonly toMm: Matrix;
  readonly mmPerPx: number;
  /** What the author says the whole path measures, in user units (`pathLength`). */
  readonly pathLength: number | undefined;
  readonly budget: Budget;
}

export interface StrokeArea {
  /** Closed, all turning the positive way: their union under nonzero is what is painted. */
  readonly subpaths: readonly Subpath[];
  /** mm, where the transform keeps it even, else the geometric mean. */
  readonly width: number;
  /** Undefined where the line is stroked in one. */
  readonly dashes: readonly Dash[] | undefined;
  /** True where there were so many dashes that the line was stroked without them. */
  readonly dashesLeftOut: boolean;
}

/** Undefined where the stroke has no width. `outline` is in sheet mm. */
export function strokeArea(outline: readonly Subpath[], context: StrokeContext): StrokeArea | undefined {
  const pen = penFor(context);
  if (!pen) return undefined;
  const mayDash = context.style.inherited['stroke-dasharray'].length > 0;
  const dashed = mayDash ? dashLines(outline, pen, context) : undefined;
  const dashes = dashed === 'too many' ? undefined : dashed;
  const subpaths = dashes ? strokedLines(dashes.lines, pen) : outline.flatMap((subpath) => strokedChain(subpath, pen));
  const width = 2 * pen.half * meanScale(pen);
  return { subpaths, width, dashes: dashes?.places, dashesLeftOut: dashed === 'too many' };
}

function strokedLines(lines: readonly PenLine[], pen: Pen): readonly Subpath[] {
  const sink = new PolygonSink(pen);
  for (const line of lines) outlineContour(piecesOfLine(line, pen), pen, sink);
  return sink.subpaths;
}

/** mm: dashes that repeat within less run together under any tool (common practice, no source). */
const FINEST_PATTERN = PLAINLY_BESIDE;

/** mm in one of the pen's units, on average over all directions. */
function meanScale({ toMm: { a, b, c, d } }: Pen): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

/** Undefined where the pattern leaves the lines whole. */
function dashLines(
  outline: readonly Subpath[],
  pen: Pen,
  context: StrokeContext,
): { lines: PenLine[]; places: Dash[] } | 'too many' | undefined {
  const measured = outline.map((subpath) => measureLine(toPenUnits(subpath, pen), pen.tolerance / 4));
  const pattern = dashPattern(
    measured.reduce((sum, { length }) => sum + length, 0),
    pen,
    context,
  );
  if (!pattern) return undefined;
  if (pattern.lengths.reduce((sum, length) => sum + length, 0) * meanScale(pen) < FINEST_PATTERN) return 'too many';
  const count = measured.reduce((sum, line) => sum + dashCount(line, pattern), 0);
  if (!Number.isFinite(count) || !context.budget.spendCurves(count)) return 'too many';
  const dashes = measured.flatMap((line, subpath) => dashLine(line, pattern).map((dash) => ({ dash, subpath })));
  return {
    lines: dashes.map(({ dash }) => dash),
    places: dashes.map(({ dash: { stretches = [] }, subpath }) => ({ subpath, stretches })),
  };
}

function penFor({ style, viewport, toMm, mmPerPx }: StrokeContext): Pen | undefined {
  const { inherited, own } = style;
  const penStyle = {
    width: toUserUnits(inherited['stroke-width'], 'diagonal', viewport, inherited['font-size']),
    cap: inherited['stroke-linecap'],
    join: drawnJoin(inherited['stroke-linejoin']),
    miterLimit: inherited['stroke-miterlimit'],
  };
  const hostWidth = own['vector-effect'].split(/\s+/).includes('non-scaling-stroke');
  return hostWidth ? makeHostPen(penStyle, mmPerPx) : makePen(penStyle, toMm);
}

/** `miter-clip` and `arcs` are painted as `miter`, as programs do that do not know them (SVG 2, "Line joins"). */
function drawnJoin(join: LineJoin): Pen['join'] {
  return join === 'miter-clip' || join === 'arcs' ? 'miter' : join;
}

/** @param total the length of all lines, pen units */
function dashPattern(total: number, pen: Pen, context: StrokeContext): DashPattern | undefined {
  const {
    style: { inherited },
    viewport,
    pathLength,
  } = context;
  const list = inherited['stroke-dasharray'];
  // A pathLength of zero scales nothing (SVG 2, "The pathLength attribute": it would scale to infinity).
  const scale = pathLength !== undefined && pathLength > 0 ? total / pathLength : pen.unit;
  const measure = (length: (typeof list)[number]): number =>
    scale * toUserUnits(length, 'diagonal', viewport, inherited['font-size']);
  const lengths = list.map(measure);
  const offset = measure(inherited['stroke-dashoffset']);
  const sum = lengths.reduce((all, value) => all + value, 0);
  return sum > 0 && Number.isFinite(sum) && Number.isFinite(offset) ? { lengths, offset } : undefined;
}
