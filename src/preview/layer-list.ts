/** The layers, first painted first: switches in the stack view, a choice of one in the sheet view. */
import type { StackLayer } from '../server/protocol';
import { html, setAttributes, setText, syncChildren } from './dom';
import { millimetres } from './ruler-ticks';

export interface LayerRow {
  readonly layer: StackLayer;
  readonly shown: boolean;
}

type Control = HTMLElement & { checked: boolean; label: string };

export class LayerList {
  readonly element = html('ol', { class: 'layers' });
  private tag = '';

  /** @param toggle is called with the index of the layer whose control was used */
  constructor(toggle: (index: number) => void) {
    this.element.addEventListener('change', ({ target }) => {
      const row = target instanceof Element ? target.closest('li') : null;
      if (row) toggle([...this.element.children].indexOf(row));
    });
  }

  draw(rows: readonly LayerRow[], mode: 'stack' | 'sheet'): void {
    const tag = mode === 'stack' ? 'vscode-checkbox' : 'vscode-radio';
    if (tag !== this.tag) this.element.replaceChildren();
    this.tag = tag;
    syncChildren(this.element, rows, () => makeRow(tag), ({ firstElementChild, lastElementChild }, { layer, shown }) => {
      const control = firstElementChild as Control;
      if (control.label !== layer.name) control.label = layer.name;
      if (control.checked !== shown) control.checked = shown;
      const figures = lastElementChild;
      const swatch = figures?.querySelector('rect');
      if (swatch) setAttributes(swatch, { fill: layer.paint });
      if (figures?.lastElementChild) setText(figures.lastElementChild, figuresOf(layer));
    });
  }
}

function makeRow(tag: string): HTMLLIElement {
  const control = document.createElement(tag);
  if (tag === 'vscode-radio') control.setAttribute('name', 'sheet');
  const swatch = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  setAttributes(swatch, { class: 'swatch', width: 14, height: 14, 'aria-hidden': 'true' });
  const square = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  setAttributes(square, { width: 14, height: 14, rx: 2 });
  swatch.append(square);
  return html('li', {}, [control, html('span', { class: 'figures' }, [swatch, html('span')])]);
}

function figuresOf({ paint, reading, readingStated, openingCount, islands, cutLength }: StackLayer): string {
  const how = readingStated ? reading : `${reading} (detected)`;
  const parts = [paint, how, count(openingCount, 'opening'), `cut ${millimetres(Math.round(cutLength))} mm`];
  if (islands.length > 0) parts.splice(3, 0, count(islands.length, 'island'));
  return parts.join(' · ');
}

const count = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`;
