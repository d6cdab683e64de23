/** The tape measure: two points of the picture and the distance between them. */
import type { Point } from '../../geometry/base/curve-types';
import { setAttributes, setText, svg } from '../dom/dom';
import { toWindow, type Viewport } from '../state/viewport';

/** Pixels across the ends of the line. */
const END = 6;

export class MeasureTool {
  /** Everything in window pixels. */
  readonly element = svg('g', { class: 'tape', 'aria-hidden': 'true' });
  private from: Point | undefined;
  private to: Point | undefined;
  /** Whether `to` follows the pointer. */
  private open = false;
  private readonly halo = svg('path', { class: 'halo' });
  private readonly line = svg('path', { class: 'tape-line' });
  private readonly plate = svg('rect', { class: 'plate', height: 20, rx: 4 });
  private readonly label = svg('text', { class: 'tape-label' });

  constructor() {
    this.element.append(this.halo, this.line, this.plate, this.label);
  }

  /** The first point, then the second; a third begins anew. In mm of the picture. */
  put(point: Point): void {
    if (this.from && this.open) {
      [this.to, this.open] = [point, false];
    } else {
      [this.from, this.to, this.open] = [point, undefined, true];
    }
  }

  /** Where the second point would be. */
  follow(point: Point): void {
    if (this.open) this.to = point;
  }

  clear(): void {
    [this.from, this.to, this.open] = [undefined, undefined, false];
  }

  get used(): boolean {
    return this.from !== undefined;
  }

  /** "12.34 mm (12.00 across, 2.87 down)" */
  get reading(): string | undefined {
    return this.from && this.to ? measurementText(this.from, this.to) : undefined;
  }

  draw(view: Viewport): void {
    const { from, to } = this;
    setAttributes(this.element, { visibility: from ? 'visible' : 'hidden' });
    if (!from) return;
    const [a, b] = [toWindow(view, from), toWindow(view, to ?? from)];
    for (const path of [this.halo, this.line]) setAttributes(path, { d: linePath(a, b) });
    const text = this.reading ?? '';
    setText(this.label, text);
    const width = text === '' ? 0 : text.length * 6.6 + 14;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 - 16 };
    setAttributes(this.plate, { x: middle.x - width / 2, y: middle.y - 10, width });
    setAttributes(this.label, { x: middle.x, y: middle.y });
  }
}

export function measurementText(from: Point, to: Point): string {
  const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  return `${Math.hypot(dx, dy).toFixed(2)} mm (${dx.toFixed(2)} across, ${dy.toFixed(2)} down)`;
}

function linePath(a: Point, b: Point): string {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const side = length > 0 ? { x: (-(b.y - a.y) / length) * END, y: ((b.x - a.x) / length) * END } : { x: 0, y: END };
  const end = ({ x, y }: Point) => `M${x - side.x} ${y - side.y}L${x + side.x} ${y + side.y}`;
  return `M${a.x} ${a.y}L${b.x} ${b.y}${end(a)}${end(b)}`;
}
