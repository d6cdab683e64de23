/** How the picture is looked at: the way of looking, how near, and whether the panel stays with its file. */
import type { ViewMode } from '../../picture/scene';
import { html, setAttributes, setText } from '../dom/dom';
import type { Viewport } from '../state/viewport';

export interface ToolbarActions {
  mode(mode: ViewMode): void;
  zoom(factor: number): void;
  fit(): void;
  trueSize(): void;
  pin(): void;
  saveAs(): void;
}

const VIEW_MODE_TITLES: Readonly<Record<ViewMode, string>> = {
  print: 'The print',
  sheet: 'One sheet',
  sheets: 'All sheets',
};

export class Toolbar {
  readonly element: HTMLElement;
  private readonly radios: Readonly<Record<ViewMode, HTMLInputElement>>;
  private readonly nearness = html('output', { class: 'nearness', 'aria-label': 'Size on the screen' });
  private readonly pin: HTMLElement;

  constructor(actions: ToolbarActions) {
    const looks = Object.keys(VIEW_MODE_TITLES) as ViewMode[];
    const radios = looks.map((look) => [look, radio(() => actions.mode(look))] as const);
    this.radios = Object.fromEntries(radios) as Record<ViewMode, HTMLInputElement>;
    this.pin = button('Pin', 'Pin: stay with this file', () => actions.pin());
    const group = html(
      'span',
      { role: 'radiogroup', 'aria-label': 'Way of looking' },
      radios.map(([look, input]) => html('label', {}, [input, VIEW_MODE_TITLES[look]])),
    );
    this.element = html('div', { class: 'toolbar', role: 'toolbar', 'aria-label': 'View' }, [
      group,
      html('span', { class: 'zoom' }, [
        button('−', 'Farther', () => actions.zoom(1 / 1.25)),
        this.nearness,
        button('+', 'Nearer', () => actions.zoom(1.25)),
        button('Fit', 'Fit: show the whole picture', () => actions.fit()),
        button('1:1', '1:1, show at true size', () => actions.trueSize()),
      ]),
      html('span', { class: 'panel-tools' }, [
        this.pin,
        button('Save picture…', 'Save picture… as PNG or SVG', () => actions.saveAs()),
      ]),
    ]);
  }

  /** @param trueScale CSS pixels to the mm at true size */
  draw(mode: ViewMode, view: Viewport, trueScale: number): void {
    this.radios[mode].checked = true;
    setText(this.nearness, `${Math.round((view.scale / trueScale) * 100)} %`);
  }

  drawPin(pinned: boolean): void {
    setAttributes(this.pin, { 'aria-pressed': String(pinned) });
  }
}

function radio(chosen: () => void): HTMLInputElement {
  const made = html('input', { type: 'radio', name: 'mode' });
  made.addEventListener('change', chosen);
  return made;
}

/** @param name begins with the label where that is a word: who speaks to the page says what stands there */
function button(label: string, name: string, action: () => void): HTMLElement {
  const made = html('button', { type: 'button', class: 'tool', 'aria-label': name, title: name }, [label]);
  made.addEventListener('click', action);
  return made;
}
