/** The styles in which the bridges of a layer can be planned, one of them chosen: side by side, or as a list where room is short. */
import type { BridgeStyle } from '../../config/bridge-style';
import { html } from '../dom/dom';

/** By the names that `tombolo.json` has for them. */
const STYLES: Readonly<Record<BridgeStyle, { readonly name: string; readonly hint: string }>> = {
  auto: { name: 'Auto', hint: 'as the drawing asks for: upright in lettering, mirrored where it is mirrored' },
  upright: { name: 'Upright', hint: 'all of them vertical' },
  level: { name: 'Level', hint: 'all of them horizontal' },
  shortest: { name: 'Shortest', hint: 'across the narrowest gaps' },
  fewest: { name: 'Fewest', hint: 'one for each island, where one holds it' },
  hidden: { name: 'Hidden', hint: 'where later layers paint over them' },
};

export class StyleChoice {
  /** The style sheet shows one of its two controls. */
  readonly element: HTMLElement;
  private readonly inputs: readonly HTMLInputElement[];
  private readonly list: HTMLSelectElement;

  constructor(chosen: (style: BridgeStyle) => void) {
    const entries = Object.entries(STYLES);
    const options = entries.map(([style, { name, hint }]) => {
      const input = html('input', { type: 'radio', name: 'bridge-style', value: style });
      return { input, label: html('label', { title: hint }, [input, html('span', {}, [name])]) };
    });
    this.inputs = options.map(({ input }) => input);
    this.list = html(
      'select',
      {},
      entries.map(([value, { name }]) => html('option', { value }, [name])),
    );
    this.element = html('div', { class: 'bridge-style' }, [
      html('fieldset', {}, [html('legend', {}, ['Style']), ...options.map(({ label }) => label)]),
      html('label', { class: 'style-list' }, ['Style', this.list]),
    ]);
    this.element.addEventListener('change', ({ target }) => {
      if (target instanceof HTMLInputElement || target instanceof HTMLSelectElement)
        chosen(target.value as BridgeStyle);
    });
  }

  /** @param style undefined while it is not known */
  draw(style: BridgeStyle | undefined): void {
    for (const input of this.inputs) input.checked = input.value === style;
    this.list.value = style ?? '';
  }

  focus(): void {
    const input = this.inputs.find(({ checked }) => checked) ?? this.inputs[0];
    if (this.list.checkVisibility()) this.list.focus();
    else input?.focus();
  }
}
