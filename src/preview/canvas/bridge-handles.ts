/** A standing bridge on the picture: lit up, with handles at its sides, and the ghost of where it would stand. */

import { formatSides } from '../../config/values';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import { add, dot, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { setAttributes, setText, svg } from '../dom/dom';
import { toWindow, type Viewport } from '../state/viewport';

/** A bridge by its measures, mm of its sheet. */
export interface BridgeShape {
  readonly centre: Point;
  /** Of length 1, from bank to bank. */
  readonly along: Point;
  readonly width: number;
  readonly length: number;
}

/** What is drawn: where a bridge stands, and where it would. */
export interface BridgeDrawing {
  readonly stands: BridgeShape;
  readonly ghost?: BridgeShape;
  readonly state: 'hovered' | 'selected' | 'moved' | 'refused' | 'removed';
  readonly place: Matrix;
}

/** Pixels: from a side to its handle, so that both can be reached on the thinnest bridge; a handle's half side. */
const HANDLE_OFF = 13;
const HANDLE = 5;
/** From the handle to the middle of the measure. */
const LABEL_OFF = 24;

/** The corners of a bridge in the window. */
function cornersIn(shape: BridgeShape, place: Matrix, view: Viewport): Point[] {
  return cornersOf(shape).map((corner) => toWindow(view, apply(place, corner)));
}

function cornersOf({ centre, along, width, length }: BridgeShape): Point[] {
  const [half, side] = [scale(along, length / 2), scale(perpendicular(along), width / 2)];
  const corners = [add(half, side), subtract(half, side), scale(add(half, side), -1), subtract(side, half)];
  return corners.map((corner) => add(centre, corner));
}

/** Its outline as path data, mm. */
export function rectangleOf(shape: BridgeShape): string {
  return pathOf(cornersOf(shape));
}

/** Its two handles in the window: beside the middles of its sides. */
export function handlesOf(shape: BridgeShape, place: Matrix, view: Viewport): readonly [Point, Point] {
  return beside(shape, HANDLE_OFF, place, view);
}

/** The places in the window so many pixels beyond the middles of both sides. */
function beside(
  { centre, along, width }: BridgeShape,
  pixels: number,
  place: Matrix,
  view: Viewport,
): readonly [Point, Point] {
  const far = width / 2 + pixels / view.scale;
  const at = (sign: number): Point =>
    toWindow(view, apply(place, add(centre, scale(perpendicular(along), sign * far))));
  return [at(1), at(-1)];
}

export class BridgeHandles {
  /** Everything in window pixels. */
  readonly element = svg('g', { class: 'bridge-handles', 'aria-hidden': 'true' });
  private readonly stands = svg('path', { class: 'bridge-stands' });
  private readonly halo = svg('path', { class: 'bridge-halo' });
  private readonly ghost = svg('path', { class: 'bridge-ghost' });
  private readonly strike = svg('path', { class: 'bridge-strike' });
  private readonly stems = svg('path', { class: 'bridge-stems' });
  private readonly handles = [0, 1].map(() =>
    svg('rect', { class: 'bridge-handle', width: 2 * HANDLE, height: 2 * HANDLE, rx: 2 }),
  );
  private readonly plate = svg('rect', { class: 'plate', height: 18, rx: 4 });
  private readonly label = svg('text', { class: 'tape-label' });

  constructor() {
    this.element.append(
      this.halo,
      this.stands,
      this.ghost,
      this.strike,
      this.stems,
      ...this.handles,
      this.plate,
      this.label,
    );
  }

  draw(drawing: BridgeDrawing | undefined, view: Viewport): void {
    setAttributes(this.element, { visibility: drawing ? 'visible' : 'hidden', 'data-state': drawing?.state ?? '' });
    if (!drawing) return;
    const { stands, ghost, state, place } = drawing;
    const shown = ghost ?? stands;
    const corners = cornersIn(shown, place, view);
    const outline = pathOf(corners);
    setAttributes(this.stands, { d: pathOf(cornersIn(stands, place, view)) });
    setAttributes(this.halo, { d: outline });
    setAttributes(this.ghost, { d: ghost ? outline : '' });
    setAttributes(this.strike, { d: state === 'removed' ? crossOf(corners) : '' });
    const handles = handlesOf(shown, place, view);
    this.drawHandles(handles, shown, place, view, state === 'selected' || state === 'moved');
    this.write(formatSides(shown.width, shown.length, 2), labelAt(handles));
  }

  private drawHandles(
    at: readonly [Point, Point],
    shown: BridgeShape,
    place: Matrix,
    view: Viewport,
    visible: boolean,
  ): void {
    const sides = beside(shown, 0, place, view);
    const stems = at.map(({ x, y }, i) => `M${sides[i]?.x} ${sides[i]?.y}L${x} ${y}`).join('');
    setAttributes(this.stems, { d: visible ? stems : '' });
    this.handles.forEach((handle, i) => {
      const { x, y } = at[i] as Point;
      setAttributes(handle, { x: x - HANDLE, y: y - HANDLE, visibility: visible ? 'inherit' : 'hidden' });
    });
  }

  private write(text: string, { x, y }: Point): void {
    const width = text.length * 6.6 + 12;
    setAttributes(this.plate, { x: x - width / 2, y: y - 9, width });
    setAttributes(this.label, { x, y });
    setText(this.label, text);
  }
}

/** Above the upper handle, where neither the bridge nor the pointer on it hides it. */
function labelAt([a, b]: readonly [Point, Point]): Point {
  const upper = a.y < b.y ? a : b;
  return { x: upper.x, y: upper.y - LABEL_OFF };
}

function pathOf(corners: readonly Point[]): string {
  return `M${corners.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;
}

function crossOf([a, b, c, d]: readonly Point[]): string {
  return a && b && c && d ? `M${a.x} ${a.y}L${c.x} ${c.y}M${b.x} ${b.y}L${d.x} ${d.y}` : '';
}

/** Pixels from a point of the window to a bridge; 0 on it. */
export function distanceTo(shape: BridgeShape, point: Point, place: Matrix, view: Viewport): number {
  const [a, b, , d] = cornersIn(shape, place, view);
  if (!a || !b || !d) return Infinity;
  return Math.hypot(beyond(a, b, point), beyond(a, d, point));
}

/** How far a point lies beyond the stretch between two corners, along it. */
function beyond(from: Point, to: Point, point: Point): number {
  const way = subtract(to, from);
  const whole = Math.hypot(way.x, way.y);
  if (whole === 0) return Math.hypot(point.x - from.x, point.y - from.y);
  const at = dot(subtract(point, from), way) / whole;
  return Math.max(0, -at, at - whole);
}
