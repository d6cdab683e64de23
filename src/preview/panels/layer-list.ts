/** The layers as a pile of cards, first sprayed on top: switched on and off, or one chosen; moved by drag, key or button. */

import { count } from '../../config/values';
import type { ViewMode } from '../../picture/scene';
import type { PreviewLayer } from '../../protocol/index';
import { html, setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { millimetres } from '../dom/scale-steps';
import { followRowDrags } from './row-drags';

export interface LayerRow {
  readonly layer: PreviewLayer;
  /** What tells it apart from the others, through every order. */
  readonly key: string;
  readonly shown: boolean;
}

export interface LayerActions {
  /** The control of a layer was used. */
  use(index: number): void;
  /** The card of a layer was clicked, its control or beside it: the layer that is in hand. */
  choose(index: number): void;
  /** A layer shall be painted as the one that is now at `to` is. */
  move(index: number, to: number): void;
  /** Something to be told aloud. */
  say(text: string): void;
}

/** A layer that was moved from here: its row gets the focus where it comes to lie, on the control that moved it. */
interface Moved {
  readonly key: string;
  readonly from: number;
  /** Of the controls of the row; undefined where it was dragged. */
  readonly control: number | undefined;
}

export class LayerList {
  readonly element = html('ol', { class: 'layers' });
  private type: 'checkbox' | 'radio' | undefined;
  private rows: readonly LayerRow[] = [];
  private moved: Moved | undefined;

  private readonly actions: LayerActions;

  constructor(actions: LayerActions) {
    this.actions = actions;
    const { element } = this;
    element.addEventListener('change', ({ target }) => {
      const row = this.rowOf(target);
      if (row !== undefined) actions.use(row);
    });
    element.addEventListener('click', ({ target }) => {
      const button = target instanceof Element ? target.closest<HTMLElement>('button[data-step]') : null;
      if (button?.dataset.step !== undefined) return this.step(button, Number(button.dataset.step));
      const row = this.rowOf(target);
      if (row !== undefined) actions.choose(row);
    });
    element.addEventListener('keydown', (event) => {
      const step = { ArrowUp: -1, ArrowDown: 1 }[event.key];
      if (step === undefined || !event.altKey || !(event.target instanceof HTMLElement)) return;
      event.preventDefault();
      this.step(event.target, step);
    });
    followRowDrags(element, (from, to) => this.move(from, to, undefined));
  }

  /** @param sheet the index of the layer that is in hand */
  draw(rows: readonly LayerRow[], { mode, sheet }: { readonly mode: ViewMode; readonly sheet: number }): void {
    const type = mode === 'sheet' ? 'radio' : 'checkbox';
    if (type !== this.type) this.element.replaceChildren();
    [this.type, this.rows] = [type, rows];
    syncChildren(
      this.element,
      rows,
      () => makeRow(type),
      (row, { layer, shown }, index) =>
        drawRow(row, layer, shown, {
          first: index === 0,
          last: index === rows.length - 1,
          current: index === sheet,
          index,
        }),
    );
    this.followMoved();
  }

  /** @param control that was used in a row */
  private step(control: HTMLElement, step: number): void {
    const row = this.rowOf(control);
    if (row === undefined) return;
    this.move(row, row + step, controlsOf(this.element.children[row]).indexOf(control));
  }

  private move(from: number, to: number, control: number | undefined): void {
    const [row, target] = [this.rows[from], this.rows[to]];
    if (!row) return;
    if (!target) {
      this.actions.say(`${row.layer.name} is already ${to < 0 ? 'first' : 'last'} in the spray order.`);
      return;
    }
    this.moved = { key: row.key, from, control };
    this.actions.move(from, to);
  }

  /** The order has changed as it was asked for: the focus goes with the row, and its place is told. */
  private followMoved(): void {
    const { moved, rows } = this;
    const at = rows.findIndex(({ key }) => key === moved?.key);
    const row = rows[at];
    if (!moved || !row || at === moved.from) return;
    this.moved = undefined;
    this.actions.say(`${row.layer.name}: ${at + 1} of ${rows.length} in the spray order.`);
    const controls = controlsOf(this.element.children[at]);
    const control = moved.control === undefined ? undefined : controls[moved.control];
    // At either end one of the buttons has nothing more to do; the other one is at hand.
    const usable = control?.matches(':disabled') ? controls.find((each) => each.matches('button:enabled')) : control;
    usable?.focus();
  }

  private rowOf(target: EventTarget | null): number | undefined {
    const row = target instanceof Element ? target.closest('li') : null;
    return row ? [...this.element.children].indexOf(row) : undefined;
  }
}

function controlsOf(row: Element | undefined): HTMLElement[] {
  return [...(row?.querySelectorAll<HTMLElement>('input, button') ?? [])];
}

function makeRow(type: 'checkbox' | 'radio'): HTMLLIElement {
  const swatch = svg('svg', { class: 'swatch', width: 14, height: 14, 'aria-hidden': 'true' }, [
    svg('rect', { x: 0.5, y: 0.5, width: 13, height: 13, rx: 2 }),
  ]);
  return html('li', { draggable: 'true', title: 'Drag, or Alt with the arrow keys, for another spray order' }, [
    html('span', { class: 'grip codicon codicon-gripper', 'aria-hidden': 'true' }),
    html('span', { class: 'order', 'aria-hidden': 'true' }),
    html('label', {}, [
      html('input', { type, name: 'layer', 'aria-keyshortcuts': 'Alt+ArrowUp Alt+ArrowDown' }),
      swatch,
      html('span'),
    ]),
    html('code', { class: 'paint-code' }),
    html('button', { type: 'button', class: 'tool step', 'data-step': -1 }, [icon('arrow-up')]),
    html('button', { type: 'button', class: 'tool step', 'data-step': 1 }, [icon('arrow-down')]),
    html('span', { class: 'figures' }),
  ]);
}

interface RowPlace {
  readonly index: number;
  readonly first: boolean;
  readonly last: boolean;
  readonly current: boolean;
}

function drawRow(row: HTMLLIElement, layer: PreviewLayer, shown: boolean, place: RowPlace): void {
  const { index, first, last, current } = place;
  setAttributes(row, { 'aria-current': String(current) });
  const [, order, label, paint, up, down, figures] = row.children;
  const [input, swatch, name] = label?.children ?? [];
  if (order) setText(order, String(index + 1));
  if (input instanceof HTMLInputElement) input.checked = shown;
  if (swatch?.firstElementChild) setAttributes(swatch.firstElementChild, { fill: layer.paint });
  if (name) setText(name, layer.name);
  if (paint) setText(paint, layer.paint);
  if (up instanceof HTMLButtonElement) drawStep(up, `Move ${layer.name} up in the spray order`, first);
  if (down instanceof HTMLButtonElement) drawStep(down, `Move ${layer.name} down in the spray order`, last);
  if (figures) setText(figures, figuresOf(layer));
}

const icon = (name: string): HTMLElement => html('span', { class: `codicon codicon-${name}`, 'aria-hidden': 'true' });

function drawStep(button: HTMLButtonElement, name: string, disabled: boolean): void {
  setAttributes(button, { 'aria-label': name, title: name });
  button.disabled = disabled;
}

/** How a reading is said: what is filled, or drawn, and what becomes of it. */
const READINGS: Readonly<Record<PreviewLayer['reading'], string>> = {
  openings: 'filled\u00a0=\u00a0cut\u00a0out',
  sheet: 'filled\u00a0=\u00a0card\u00a0that\u00a0stays',
  outlines: 'lines\u00a0=\u00a0cuts',
};

function figuresOf({ reading, readingStated, openingCount, islands, cutLength }: PreviewLayer): string {
  return [
    count(openingCount, 'opening'),
    islands.length > 0 ? count(islands.length, 'island') : 'no islands',
    `cut ${millimetres(Math.round(cutLength))} mm`,
    `${READINGS[reading]}${readingStated ? '' : ' (detected)'}`,
  ].join(' · ');
}
