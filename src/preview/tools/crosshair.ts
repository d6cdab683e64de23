/** The keyboard's pointer on the picture, and the ring that shows what a click would snap to. */
import type { Point } from '../../geometry/base/curve-types';
import { setAttributes, svg } from '../dom/dom';
import { toSheet, toWindow, type Viewport } from '../state/viewport';

/** Pixels for one press of an arrow key. */
const STEP = 10;

const STEPS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -STEP, y: 0 },
  ArrowRight: { x: STEP, y: 0 },
  ArrowUp: { x: 0, y: -STEP },
  ArrowDown: { x: 0, y: STEP },
};

export class Crosshair {
  /** Everything in window pixels. */
  readonly element = svg('g', { class: 'crosshair', 'aria-hidden': 'true' });
  private readonly cross = ['halo', 'cross'].map((name) => svg('path', { class: name }));
  private readonly ring = svg('circle', { class: 'snap', r: 6 });
  /** In mm of the picture. */
  private at: Point | undefined;
  private snap: Point | undefined;

  constructor() {
    this.element.append(...this.cross, this.ring);
  }

  /** @param point mm of the picture; undefined takes it away */
  put(point: Point | undefined): void {
    this.at = point;
  }

  /** @param point mm of the picture that a click would take; undefined where it would take its own */
  snapTo(point: Point | undefined): void {
    this.snap = point;
  }

  place(view: Viewport): Point | undefined {
    return this.at && toWindow(view, this.at);
  }

  /** Moves by one step of an arrow key, from `start` (window) where it is not shown yet; false for other keys. */
  step(key: string, view: Viewport, start: Point): boolean {
    const step = STEPS[key];
    if (!step) return false;
    const { x, y } = this.place(view) ?? start;
    this.at = toSheet(view, this.at ? { x: x + step.x, y: y + step.y } : { x, y });
    return true;
  }

  draw(view: Viewport): void {
    const at = this.place(view);
    const cross = at
      ? `M${at.x - 14} ${at.y}H${at.x - 3}M${at.x + 3} ${at.y}H${at.x + 14}` +
        `M${at.x} ${at.y - 14}V${at.y - 3}M${at.x} ${at.y + 3}V${at.y + 14}`
      : '';
    for (const path of this.cross) setAttributes(path, { d: cross });
    const snap = this.snap && toWindow(view, this.snap);
    setAttributes(this.ring, { visibility: snap ? 'visible' : 'hidden', cx: snap?.x ?? 0, cy: snap?.y ?? 0 });
  }
}
