/** The styles in which the bridges of a layer can be planned, one of them chosen. */
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
  readonly element: HTMLFieldSetElement;
  private readonly inputs: readonly HTMLInputElement[];

  constructor(chosen: (style: BridgeStyle) => void) {
    const options = Object.entries(STYLES).map(([style, { name, hint }]) => {
      const input = html('input', { type: 'radio', name: 'bridge-style', value: style });
      return { input, label: html('label', { title: hint }, [input, html('span', {}, [name])]) };
    });
    this.inputs = options.map(({ input }) => input);
    this.element = html('fieldset', { class: 'bridge-styles' }, [
      html('legend', {}, ['Style']),
      ...options.map(({ label }) => label),
    ]);
    this.element.addEventListener('change', ({ target }) => {
      if (target instanceof HTMLInputElement) chosen(target.value as BridgeStyle);
    });
  }

  /** @param style undefined while it is not known */
  draw(style: BridgeStyle | undefined): void {
    for (const input of this.inputs) input.checked = input.value === style;
  }

  focus(): void {
    (this.inputs.find(({ checked }) => checked) ?? this.inputs[0])?.focus();
  }
}
