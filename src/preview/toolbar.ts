/** How the picture is looked at: the stack or one sheet, and how near. */
import { html, setText } from './dom';
import { TRUE_SIZE, type View } from './view';

export interface ToolbarActions {
  mode(mode: 'stack' | 'sheet'): void;
  zoom(factor: number): void;
  fit(): void;
  trueSize(): void;
}

export class Toolbar {
  readonly element: HTMLElement;
  private readonly radios: Readonly<Record<'stack' | 'sheet', HTMLInputElement>>;
  private readonly nearness = html('output', { class: 'nearness', 'aria-label': 'Size on the screen' });

  constructor(actions: ToolbarActions) {
    this.radios = { stack: radio(() => actions.mode('stack')), sheet: radio(() => actions.mode('sheet')) };
    const group = html('span', { role: 'radiogroup', 'aria-label': 'What is shown' }, [
      html('label', {}, [this.radios.stack, 'Painted stack']), html('label', {}, [this.radios.sheet, 'One sheet']),
    ]);
    this.element = html('div', { class: 'toolbar', role: 'toolbar', 'aria-label': 'View' }, [
      group,
      html('span', { class: 'zoom' }, [
        button('−', 'Farther', () => actions.zoom(1 / 1.25)),
        this.nearness,
        button('+', 'Nearer', () => actions.zoom(1.25)),
        button('Fit', 'Show the whole sheet', () => actions.fit()),
        button('1:1', 'Show at true size', () => actions.trueSize()),
      ]),
    ]);
  }

  draw(mode: 'stack' | 'sheet', view: View): void {
    this.radios[mode].checked = true;
    setText(this.nearness, `${Math.round((view.scale / TRUE_SIZE) * 100)} %`);
  }
}

function radio(chosen: () => void): HTMLInputElement {
  const made = html('input', { type: 'radio', name: 'mode' });
  made.addEventListener('change', chosen);
  return made;
}

function button(label: string, name: string, action: () => void): HTMLElement {
  const made = html('button', { type: 'button', class: 'tool', 'aria-label': name, title: name }, [label]);
  made.addEventListener('click', action);
  return made;
}
