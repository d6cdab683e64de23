/** Moves the outlines of an element aside where they bound a thin part of an opening; curves stay curves. */
import { defined } from '../../base/defined';
import type { Arc, Cubic, Curve, Matrix, Point } from '../../geometry/base/curve-types';
import { boxesTouch } from '../../geometry/base/ring';
import { distance, dot } from '../../geometry/base/vector';
import { boundsOf, lengthOf, pointAt, tangentAt, transformCurve } from '../../geometry/curve/index';
import type { StepPath } from '../path/path-model';
import type { PathSource } from '../path/path-writer';
import type { Redrawn } from '../path/rewrite-commands';
import { type CornerMove, moveOfCorner, type Pull } from './corner-move';
import type { CurveDemands, Demand, Movable } from './demands';
import { displaceCurve } from './displace-curve';
import type { Bank, MovableBoundary } from './movable-boundary';

export interface Displacement {
  readonly boundary: MovableBoundary;
  readonly bank: Bank;
  /** mm that the thin part is to have. */
  readonly width: number;
  readonly toMm: Matrix;
  readonly toUser: Matrix;
}

/** In widths: a place that need not move may move this far with its neighbours. */
const MOVES_ALONG = 0.12;

/** How corners move. */
interface CornerMode {
  /** As many times as far as they themselves must, for the curves between them to move far enough. */
  readonly more: number;
  /** So that each side moves by just what it must; else as little as all directions allow. */
  readonly exact: boolean;
}

const MODES: readonly CornerMode[] = [1, 1.2, 1.5].flatMap((more) => [true, false].map((exact) => ({ more, exact })));

/** A curve of a subpath in sheet mm; arcs are several. */
interface Piece extends CurveDemands {
  /** Index of its command; undefined for the line that only a fill closes with. */
  readonly command: number | undefined;
}

/** @returns what becomes of a path; undefined where one of its curves cannot be moved so */
export function displaceOutlines(source: PathSource, how: Displacement): Redrawn | undefined {
  const starts = new Map<number, Point>();
  const curves = new Map<number, Curve[]>();
  for (const path of source.paths) {
    const moved = displaceInAnyMode(path, how);
    if (!moved) return undefined;
    if (moved.start && path.move !== undefined) starts.set(path.move, moved.start);
    for (const [command, own] of moved.curves) curves.set(command, own);
  }
  return { starts, curves };
}

interface MovedSubpath {
  readonly start: Point | undefined;
  readonly curves: ReadonlyMap<number, Curve[]>;
}

function displaceInAnyMode(path: StepPath, how: Displacement): MovedSubpath | undefined {
  const pieces = piecesOf(path, how);
  if (!pieces.some(({ demands }) => demands.some(({ need }) => need > 0)))
    return { start: undefined, curves: new Map() };
  for (const mode of MODES) {
    const moved = displaceSubpath(path, pieces, how, mode);
    if (moved) return moved;
  }
  return undefined;
}

function displaceSubpath(
  path: StepPath,
  pieces: readonly Piece[],
  how: Displacement,
  mode: CornerMode,
): MovedSubpath | undefined {
  const corners = pieces.map((piece, i) => cornerBefore(pieces.at(i - 1) as Piece, piece, how, mode));
  const curves = new Map<number, Curve[]>();
  const user = (curve: Curve) => transformCurve(curve, how.toUser);
  const changed = new Set<number>();
  const lastCommand = path.steps.findLast(({ command }) => command !== undefined)?.command;
  for (const [i, piece] of pieces.entries()) {
    const [before, after] = [corners[i], corners[(i + 1) % pieces.length]];
    if (!before || !after) return undefined;
    const moved = displaceCurve(piece, before.start, after.end, MOVES_ALONG * how.width);
    const command = piece.command ?? lastCommand;
    if (!moved || command === undefined) return undefined;
    const isClosing = piece.command === undefined && moved.length === 1 && moved[0]?.kind === 'line';
    if (moved.length !== 1 || moved[0] !== piece.curve) changed.add(command);
    const own = isClosing ? [] : moved.map(user);
    curves.set(command, [
      ...(curves.get(command) ?? []),
      ...own,
      ...capAfter(piece, after, i < pieces.length - 1).map(user),
    ]);
  }
  for (const command of [...curves.keys()]) if (!changed.has(command)) curves.delete(command);
  const first = defined(corners[0]).start;
  const isMoved = Math.hypot(first.x, first.y) > 1e-9;
  const start = isMoved ? shifted(defined(pieces[0]).curve.start, first, how.toUser) : undefined;
  return { start, curves };
}

/** The blunt end in place of a point; at the subpath's own end it is closed so anyway. */
function capAfter({ curve }: Piece, { end, start }: CornerMove, isInner: boolean): Curve[] {
  if (!isInner || (end.x === start.x && end.y === start.y)) return [];
  const at = curve.end;
  return [{ kind: 'line', start: { x: at.x + end.x, y: at.y + end.y }, end: { x: at.x + start.x, y: at.y + start.y } }];
}

function shifted({ x, y }: Point, by: Point, toUser: Matrix): Point {
  const at = { x: x + by.x, y: y + by.y };
  return transformCurve({ kind: 'line', start: at, end: at }, toUser).start;
}

function piecesOf({ steps }: StepPath, how: Displacement): Piece[] {
  return steps.flatMap(({ curve, command }) =>
    movableParts(transformCurve(curve, how.toMm)).map(
      (part): Piece => ({ curve: part, command, demands: demandsOn(part, how) }),
    ),
  );
}

function movableParts(curve: Curve): Movable[] {
  return curve.kind === 'arc' ? cubicsOf(curve) : [curve];
}

/** Radians: arcs are written as cubics that turn by no more, which then are off by 4 millionths of the radius. */
const ARC_STEP = Math.PI / 4;

/** Handles of 4/3·tan(θ/4) radii (common formula, from memory). */
export function cubicsOf(arc: Arc): Cubic[] {
  const count = Math.max(1, Math.ceil(Math.abs(arc.sweep) / ARC_STEP - 1e-9));
  const { centre, axisU: u, axisV: v } = arc;
  const handle = (4 / 3) * Math.tan(arc.sweep / count / 4);
  const ahead = (angle: number, way: number, from: Point): Point => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return { x: from.x + way * (v.x * cos - u.x * sin), y: from.y + way * (v.y * cos - u.y * sin) };
  };
  const on = (angle: number): Point => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return { x: centre.x + u.x * cos + v.x * sin, y: centre.y + u.y * cos + v.y * sin };
  };
  return Array.from({ length: count }, (_, i): Cubic => {
    const [a, b] = [arc.from + (arc.sweep * i) / count, arc.from + (arc.sweep * (i + 1)) / count];
    const start = i === 0 ? arc.start : on(a);
    const end = i === count - 1 ? arc.end : on(b);
    return { kind: 'cubic', start, control1: ahead(a, handle, start), control2: ahead(b, -handle, end), end };
  });
}

function demandsOn(curve: Movable, { boundary, bank, width }: Displacement): Demand[] {
  if (!boxesTouch(boundsOf(curve), boundary.extent)) return [];
  const count = Math.max(8, Math.min(300, Math.ceil((4 * lengthOf(curve)) / width)));
  return Array.from({ length: count + 1 }, (_, i): Demand => {
    const t = i / count;
    const outward = outwardOn(curve, t, boundary);
    return { t, outward, need: outward ? boundary.needAt({ at: pointAt(curve, t), outward }, bank) : 0 };
  });
}

function outwardOn(curve: Curve, t: number, boundary: MovableBoundary): Point | undefined {
  const along = tangentAt(curve, t);
  return boundary.outwardAt(pointAt(curve, t), { x: -along.y, y: along.x });
}

const STILL: CornerMove = { end: { x: 0, y: 0 }, start: { x: 0, y: 0 } };

function pull({ outward, need }: Demand, more: number): Pull | undefined {
  return outward && { outward, need: more * need };
}

function cornerBefore(
  before: Piece,
  after: Piece,
  { boundary, bank, width }: Displacement,
  { more, exact }: CornerMode,
): CornerMove | undefined {
  const at = after.curve.start;
  // An open line has two ends that are no corner.
  const [last, first] = [before.demands.at(-1), after.demands[0]];
  if ((!last && !first) || distance(before.curve.end, at) > 1e-6) return STILL;
  const pulls = [last, first].flatMap((demand): Pull[] => {
    const { outward, need } = demand ?? {};
    return outward && need !== undefined ? [{ outward, need }] : [];
  });
  const inner = boundary
    .placesAt(at)
    .filter(({ outward }) => pulls.every((pull) => dot(pull.outward, outward) < 0.9999))
    .map(({ at: place, outward }): Pull => ({ outward, need: boundary.needAt({ at: place, outward }, bank) }));
  const all = [...pulls, ...inner];
  if (!all.some(({ need }) => need > 0)) return STILL;
  const corner = {
    into: tangentAt(before.curve, 1),
    out: tangentAt(after.curve, 0),
    before: last && pull(last, more),
    after: first && pull(first, more),
  };
  return moveOfCorner(
    corner,
    all.map(({ outward, need }) => ({ outward, need: more * need })),
    width,
    exact,
  );
}
