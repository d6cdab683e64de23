/** How the picture is looked at: the stack or one sheet, and how near. */
import { html, setText } from './dom';
import { TRUE_SIZE, type View } from './view';

export interface ToolbarActions {
  mode(mode: 'stack' | 'sheet'): void;
  zoom(factor: number): void;
  fit(): void;
  trueSize(): void;
}

type Radio = HTMLElement & { checked: boolean; value: string };

export class Toolbar {
  readonly element: HTMLElement;
  private readonly radios: readonly Radio[];
  private readonly nearness = html('output', { class: 'nearness', 'aria-label': 'Size on the screen' });

  constructor(actions: ToolbarActions) {
    this.radios = [radio('stack', 'Painted stack'), radio('sheet', 'One sheet')];
    const group = document.createElement('vscode-radio-group');
    group.setAttribute('aria-label', 'What is shown');
    group.append(...this.radios);
    group.addEventListener('change', () => {
      actions.mode(this.radios[1]?.checked ? 'sheet' : 'stack');
    });
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
    for (const each of this.radios) {
      const checked = each.getAttribute('value') === mode;
      if (each.checked !== checked) each.checked = checked;
    }
    setText(this.nearness, `${Math.round((view.scale / TRUE_SIZE) * 100)} %`);
  }
}

function radio(value: string, label: string): Radio {
  const made = document.createElement('vscode-radio') as Radio;
  made.setAttribute('name', 'mode');
  made.setAttribute('value', value);
  made.setAttribute('label', label);
  return made;
}

function button(label: string, name: string, action: () => void): HTMLElement {
  const made = html('button', { type: 'button', class: 'tool', 'aria-label': name, title: name }, [label]);
  made.addEventListener('click', action);
  return made;
}
