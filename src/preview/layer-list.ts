/** The layers, first painted first: switches in the stack view, a choice of one in the sheet view. */
import type { StackLayer } from '../server/protocol';
import { html, setAttributes, setText, svg, syncChildren } from './dom';
import { millimetres } from './ruler-ticks';

export interface LayerRow {
  readonly layer: StackLayer;
  readonly shown: boolean;
}

export class LayerList {
  readonly element = html('ol', { class: 'layers' });
  private mode: 'stack' | 'sheet' | undefined;

  /** @param toggle is called with the index of the layer whose control was used */
  constructor(toggle: (index: number) => void) {
    this.element.addEventListener('change', ({ target }) => {
      const row = target instanceof Element ? target.closest('li') : null;
      if (row) toggle([...this.element.children].indexOf(row));
    });
  }

  draw(rows: readonly LayerRow[], mode: 'stack' | 'sheet'): void {
    if (mode !== this.mode) this.element.replaceChildren();
    this.mode = mode;
    const type = mode === 'stack' ? 'checkbox' : 'radio';
    syncChildren(this.element, rows, () => makeRow(type), (row, { layer, shown }) => {
      const [label, figures] = row.children;
      const [input, swatch, name] = label?.children ?? [];
      if (input instanceof HTMLInputElement) input.checked = shown;
      if (swatch?.firstElementChild) setAttributes(swatch.firstElementChild, { fill: layer.paint });
      if (name) setText(name, layer.name);
      if (figures) setText(figures, figuresOf(layer));
    });
  }
}

function makeRow(type: 'checkbox' | 'radio'): HTMLLIElement {
  const swatch = svg('svg', { class: 'swatch', width: 14, height: 14, 'aria-hidden': 'true' }, [
    svg('rect', { x: 0.5, y: 0.5, width: 13, height: 13, rx: 2 }),
  ]);
  return html('li', {}, [
    html('label', {}, [html('input', { type, name: 'layer' }), swatch, html('span')]),
    html('span', { class: 'figures' }),
  ]);
}

function figuresOf({ reading, readingStated, openingCount, islands, cutLength }: StackLayer): string {
  const parts = [count(openingCount, 'opening')];
  if (islands.length > 0) parts.push(count(islands.length, 'island'));
  parts.push(`cut ${millimetres(Math.round(cutLength))} mm`);
  // Only what the artist did not say, or may not expect.
  if (!readingStated) parts.push(`read as ${reading} (detected)`);
  else if (reading !== 'openings') parts.push(`read as ${reading}`);
  return parts.join(' · ');
}

const count = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`;
