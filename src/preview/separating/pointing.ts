/**
 * Pointing at the picture: at a place, to pick its colour, or over a part of it. By pointer, or by keys: the arrows move a
 * cross, Enter takes the place that it marks, Escape ends it.
 */
import { html, setAttributes } from '../dom/dom';

/** Of the print, 0..1 from its upper left corner. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Pointing {
  /** What to do, for the line below the picture. */
  readonly hint: string;
  /** Whether a part is wanted, and not a place. */
  readonly isPart: boolean;
  done(from: Spot, to: Spot): void;
}

/** Of the width and height. */
const STEP = 0.01;
const LEAP = 0.1;

export class Pointer {
  readonly element = html('div', { class: 'pointing', tabindex: 0, role: 'application', hidden: '' });
  private readonly cross = html('span', { class: 'cross', 'aria-hidden': 'true' });
  private readonly part = html('span', { class: 'part', 'aria-hidden': 'true', hidden: '' });
  private readonly said: (text: string) => void;
  private now: Pointing | undefined;
  private back: HTMLElement | undefined;
  private spot: Spot = { x: 0.5, y: 0.5 };
  private from: Spot | undefined;

  /** @param said shows what is to be done; empty when it is done */
  constructor(said: (text: string) => void) {
    this.said = said;
    this.element.append(this.part, this.cross);
    this.element.addEventListener('pointerdown', (event) => {
      this.element.setPointerCapture(event.pointerId);
      this.moveTo(this.spotOf(event));
      if (this.now?.isPart) this.from = this.spot;
      this.draw();
    });
    this.element.addEventListener('pointermove', (event) => this.moveTo(this.spotOf(event)));
    this.element.addEventListener('pointerup', () => this.take());
    this.element.addEventListener('keydown', (event) => this.onKey(event));
  }

  start(pointing: Pointing): void {
    const { activeElement } = document;
    this.back = activeElement instanceof HTMLElement ? activeElement : undefined;
    this.now = pointing;
    this.from = undefined;
    this.element.hidden = false;
    setAttributes(this.element, { 'aria-label': pointing.hint });
    this.said(pointing.hint);
    this.draw();
    this.element.focus();
  }

  private end(): void {
    this.now = undefined;
    this.element.hidden = true;
    this.said('');
    this.back?.focus();
  }

  private onKey(event: KeyboardEvent): void {
    const step = event.shiftKey ? LEAP : STEP;
    const [dx, dy] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key] ?? [
      0, 0,
    ];
    if (dx !== 0 || dy !== 0) this.moveTo({ x: this.spot.x + step * (dx ?? 0), y: this.spot.y + step * (dy ?? 0) });
    else if (event.key === 'Escape') this.end();
    else if (event.key !== 'Enter' && event.key !== ' ') return;
    else if (this.now?.isPart && !this.from) this.from = this.spot;
    else this.take();
    event.preventDefault();
    event.stopPropagation();
    this.draw();
  }

  private take(): void {
    const { now, spot, from = spot } = this;
    if (!now) return;
    this.end();
    now.done(from, spot);
  }

  private spotOf({ clientX, clientY }: PointerEvent): Spot {
    const { left, top, width, height } = this.element.getBoundingClientRect();
    return { x: (clientX - left) / width, y: (clientY - top) / height };
  }

  private moveTo({ x, y }: Spot): void {
    const within = (value: number): number => Math.max(0, Math.min(1, value));
    this.spot = { x: within(x), y: within(y) };
    this.draw();
  }

  private draw(): void {
    const { spot, from } = this;
    place(this.cross, { left: spot.x, top: spot.y });
    this.part.hidden = !from;
    if (!from) return;
    const [left, top] = [Math.min(from.x, spot.x), Math.min(from.y, spot.y)];
    place(this.part, { left, top, width: Math.abs(from.x - spot.x), height: Math.abs(from.y - spot.y) });
  }
}

/** @param sides of the element round it, 0..1 */
export function place(element: HTMLElement, sides: Readonly<Record<string, number>>): void {
  for (const [side, share] of Object.entries(sides)) element.style.setProperty(side, `${100 * share}%`);
}
