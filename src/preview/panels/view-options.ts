/** What can be chosen for a way of looking: ground and opacity of the print, how the sheets lie. */
import type { ViewMode } from '../../picture/scene';
import { html, setText } from '../dom/dom';
import type { BenchState } from '../state/state';

export interface ViewOptionsActions {
  change(change: Partial<BenchState>): void;
}

/** The offset between staggered sheets when one first asks for it. */
const FIRST_STEP = 0.3;

export class ViewOptions {
  readonly element = html('div', {
    class: 'view-options',
    role: 'group',
    'aria-label': 'Display options',
    popover: 'auto',
  });
  private readonly ground = html('input', { type: 'color', 'aria-label': 'Colour of the ground' });
  private readonly opacity = range('Opacity', 10, 100);
  private readonly opacityText = html('output');
  private readonly reset = html('button', { type: 'button', class: 'tool' }, ['Reset ground']);
  private readonly stagger = html('input', { type: 'checkbox' });
  private readonly offset = range('Offset', 0, 100);
  private readonly groups: Readonly<Record<ViewMode, HTMLElement>>;

  constructor({ change }: ViewOptionsActions) {
    this.ground.addEventListener('input', () => change({ ground: this.ground.value }));
    this.reset.addEventListener('click', () => change({ ground: undefined }));
    this.opacity.addEventListener('input', () => change({ opacity: Number(this.opacity.value) / 100 }));
    this.stagger.addEventListener('change', () => change({ apart: this.stagger.checked ? FIRST_STEP : undefined }));
    this.offset.addEventListener('input', () => change({ apart: Number(this.offset.value) / 100 }));
    this.groups = {
      print: rows(
        [html('label', {}, [this.ground, 'Ground']), this.reset],
        [html('label', {}, ['Opacity', this.opacity, this.opacityText])],
      ),
      sheets: rows(
        [html('label', {}, [this.stagger, 'Stagger in spray order'])],
        [html('label', {}, ['Offset', this.offset])],
      ),
      sheet: html('p', {}, ['Choose the sheet under Layers.']),
    };
    this.element.append(...Object.values(this.groups));
  }

  /** @param ground the colour that is in force */
  draw({ mode, opacity, apart, ground: chosen }: BenchState, ground: string): void {
    for (const [kind, group] of Object.entries(this.groups)) group.hidden = kind !== mode;
    if (this.ground.value !== ground) this.ground.value = ground;
    this.reset.disabled = chosen === undefined;
    this.opacity.value = String(Math.round(opacity * 100));
    setText(this.opacityText, `${Math.round(opacity * 100)} %`);
    this.stagger.checked = apart !== undefined;
    this.offset.disabled = apart === undefined;
    if (apart !== undefined) this.offset.value = String(Math.round(apart * 100));
  }
}

function rows(...contents: readonly HTMLElement[][]): HTMLElement {
  return html(
    'div',
    {},
    contents.map((row) => html('div', { class: 'option-row' }, row)),
  );
}

function range(name: string, min: number, max: number): HTMLInputElement {
  return html('input', { type: 'range', min, max, step: 1, 'aria-label': name });
}
