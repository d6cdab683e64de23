/** What can be chosen for a way of looking: ground and paint of the print, how the sheets lie. */
import type { ViewMode } from '../../picture/scene';
import { html, setText } from '../dom/dom';
import type { BenchState } from '../state/state';

export interface ViewOptionsActions {
  change(change: Partial<BenchState>): void;
}

/** The step between spread sheets when one first asks for it. */
const FIRST_STEP = 0.3;

export class ViewOptions {
  readonly element = html('div', { class: 'look-options', role: 'group', 'aria-label': 'How it is shown' });
  private readonly ground = html('input', { type: 'color', 'aria-label': 'Colour of the ground' });
  private readonly opacity = range('Opacity of the paint', 10, 100);
  private readonly opacityText = html('output');
  private readonly usual = html('button', { type: 'button', class: 'tool' }, ['Usual ground']);
  private readonly spread = html('input', { type: 'checkbox' });
  private readonly apart = range('How far apart', 0, 100);
  private readonly groups: Readonly<Record<ViewMode, HTMLElement | undefined>>;

  constructor({ change }: ViewOptionsActions) {
    this.ground.addEventListener('input', () => change({ ground: this.ground.value }));
    this.usual.addEventListener('click', () => change({ ground: undefined }));
    this.opacity.addEventListener('input', () => change({ opacity: Number(this.opacity.value) / 100 }));
    this.spread.addEventListener('change', () => change({ apart: this.spread.checked ? FIRST_STEP : undefined }));
    this.apart.addEventListener('input', () => change({ apart: Number(this.apart.value) / 100 }));
    const print = html('div', { class: 'option-row' }, [
      html('label', {}, [this.ground, 'Ground']),
      this.usual,
      html('label', {}, ['Paint', this.opacity, this.opacityText]),
    ]);
    const sheets = html('div', { class: 'option-row' }, [
      html('label', {}, [this.spread, 'Spread apart in order']),
      html('label', {}, ['Step', this.apart]),
    ]);
    this.groups = { print, sheets, sheet: undefined };
    this.element.append(print, sheets);
  }

  /** @param ground the colour that is in force */
  draw({ mode, opacity, apart, ground: chosen }: BenchState, ground: string): void {
    for (const [kind, group] of Object.entries(this.groups)) if (group) group.hidden = kind !== mode;
    this.element.hidden = this.groups[mode] === undefined;
    if (this.ground.value !== ground) this.ground.value = ground;
    this.usual.hidden = chosen === undefined;
    this.opacity.value = String(Math.round(opacity * 100));
    setText(this.opacityText, `${Math.round(opacity * 100)} %`);
    this.spread.checked = apart !== undefined;
    this.apart.disabled = apart === undefined;
    if (apart !== undefined) this.apart.value = String(Math.round(apart * 100));
  }
}

function range(name: string, min: number, max: number): HTMLInputElement {
  return html('input', { type: 'range', min, max, step: 1, 'aria-label': name });
}
