/** What the separation comes to, in words. */
import { count } from '../../config/values';
import type { ShownSeparation } from '../../protocol/separating';
import { html, setText, syncChildren } from '../dom/dom';

export class Figures {
  readonly element = html('dl', { class: 'figure-list' });

  show(shown: ShownSeparation): void {
    const rows = figuresOf(shown);
    syncChildren(
      this.element,
      rows,
      () => html('div', {}, [html('dt'), html('dd')]),
      (row, [name, value]) => {
        const [term, told] = row.children;
        if (term) setText(term, name);
        if (told) setText(told, value);
      },
    );
  }
}

export function figuresOf(shown: ShownSeparation): readonly (readonly [string, string])[] {
  const { islands, nodes, difference, tooFine, width, height } = shown;
  const fine = 100 * tooFine;
  return [
    ['Print', `${Math.round(width)} × ${Math.round(height)} mm`],
    ['Islands', `${islands.ordered} in this order, ${islands.alone} if each paint is cut alone`],
    ['Too fine', fine === 0 ? 'nothing' : `${fine < 0.1 ? 'less than 0.1' : fine.toFixed(1)} % of the picture`],
    ['Outlines', count(nodes, 'curve')],
    ['Colours', `${difference.toFixed(1)} from the picture on average (CIEDE2000)`],
  ];
}
