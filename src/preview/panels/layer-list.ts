/** The layers, first painted first: switched on and off, or one chosen; moved up and down by drag and by button. */

import { count } from '../../config/values';
import type { ViewMode } from '../../picture/scene';
import type { PreviewLayer } from '../../protocol/index';
import { html, setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { millimetres } from '../dom/scale-steps';

export interface LayerRow {
  readonly layer: PreviewLayer;
  readonly shown: boolean;
}

export interface LayerActions {
  /** The control of a layer was used. */
  use(index: number): void;
  /** A layer shall be painted as the one that is now at `to` is. */
  move(index: number, to: number): void;
}

export class LayerList {
  readonly element = html('ol', { class: 'layers' });
  private type: 'checkbox' | 'radio' | undefined;
  private dragged: number | undefined;

  private readonly actions: LayerActions;

  constructor(actions: LayerActions) {
    this.actions = actions;

    this.element.addEventListener('change', ({ target }) => {
      const row = this.rowOf(target);
      if (row !== undefined) actions.use(row);
    });
    this.element.addEventListener('click', ({ target }) => {
      const button = target instanceof Element ? target.closest<HTMLElement>('button[data-step]') : null;
      const step = button?.dataset.step;
      const row = this.rowOf(target);
      if (row !== undefined && step !== undefined) this.step(row, Number(step));
    });
    this.followDrags();
  }

  draw(rows: readonly LayerRow[], mode: ViewMode): void {
    const type = mode === 'sheet' ? 'radio' : 'checkbox';
    if (type !== this.type) this.element.replaceChildren();
    this.type = type;
    syncChildren(
      this.element,
      rows,
      () => makeRow(type),
      (row, { layer, shown }, index) => {
        const [, label, paint, earlier, later, figures] = row.children;
        const [input, swatch, name] = label?.children ?? [];
        if (row.firstElementChild) setText(row.firstElementChild, String(index + 1));
        if (input instanceof HTMLInputElement) input.checked = shown;
        if (swatch?.firstElementChild) setAttributes(swatch.firstElementChild, { fill: layer.paint });
        if (name) setText(name, layer.name);
        if (paint) setText(paint, layer.paint);
        if (earlier instanceof HTMLButtonElement)
          drawStep(earlier, `Move ${layer.name} up in the spray order`, index === 0);
        if (later instanceof HTMLButtonElement)
          drawStep(later, `Move ${layer.name} down in the spray order`, index === rows.length - 1);
        if (figures) setText(figures, figuresOf(layer));
      },
    );
  }

  /** The layer goes one place on; its button keeps the focus, so that it can be pressed again. */
  private step(row: number, step: number): void {
    const to = row + step;
    this.actions.move(row, to);
    const buttons = this.element.children[to]?.querySelectorAll<HTMLButtonElement>('button[data-step]') ?? [];
    [...buttons].find(({ dataset }) => Number(dataset.step) === step)?.focus();
  }

  private followDrags(): void {
    const { element } = this;
    element.addEventListener('dragstart', ({ target, dataTransfer }) => {
      this.dragged = this.rowOf(target);
      if (dataTransfer) dataTransfer.effectAllowed = 'move';
    });
    element.addEventListener('dragover', (event) => {
      const over = this.rowOf(event.target);
      if (this.dragged === undefined || over === undefined) return;
      event.preventDefault();
      this.showDrop(over === this.dragged ? undefined : over);
    });
    element.addEventListener('drop', (event) => {
      event.preventDefault();
      const to = this.rowOf(event.target);
      if (this.dragged !== undefined && to !== undefined && to !== this.dragged) this.actions.move(this.dragged, to);
    });
    element.addEventListener('dragend', () => {
      this.dragged = undefined;
      this.showDrop(undefined);
    });
  }

  private showDrop(over: number | undefined): void {
    [...this.element.children].forEach((row, index) => {
      row.classList.toggle('drop-above', index === over && over < (this.dragged ?? 0));
      row.classList.toggle('drop-below', index === over && over > (this.dragged ?? 0));
    });
  }

  private rowOf(target: EventTarget | null): number | undefined {
    const row = target instanceof Element ? target.closest('li') : null;
    return row ? [...this.element.children].indexOf(row) : undefined;
  }
}

function makeRow(type: 'checkbox' | 'radio'): HTMLLIElement {
  const swatch = svg('svg', { class: 'swatch', width: 14, height: 14, 'aria-hidden': 'true' }, [
    svg('rect', { x: 0.5, y: 0.5, width: 13, height: 13, rx: 2 }),
  ]);
  return html('li', { draggable: 'true' }, [
    html('span', { class: 'order', 'aria-hidden': 'true' }),
    html('label', {}, [html('input', { type, name: 'layer' }), swatch, html('span')]),
    html('code', { class: 'paint-code' }),
    html('button', { type: 'button', class: 'tool step', 'data-step': -1 }, [icon('arrow-up')]),
    html('button', { type: 'button', class: 'tool step', 'data-step': 1 }, [icon('arrow-down')]),
    html('span', { class: 'figures' }),
  ]);
}

const icon = (name: string): HTMLElement => html('span', { class: `codicon codicon-${name}`, 'aria-hidden': 'true' });

function drawStep(button: HTMLButtonElement, name: string, disabled: boolean): void {
  setAttributes(button, { 'aria-label': name, title: name });
  button.disabled = disabled;
}

function figuresOf({ reading, readingStated, openingCount, islands, cutLength }: PreviewLayer): string {
  return [
    count(openingCount, 'opening'),
    islands.length > 0 ? count(islands.length, 'island') : 'no islands',
    `cut ${millimetres(Math.round(cutLength))} mm`,
    `read as ${reading}${readingStated ? '' : ' (detected)'}`,
  ].join(' · ');
}
