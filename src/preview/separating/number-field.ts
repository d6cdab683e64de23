/** A length or a number: a slider for the hand, and a field for who knows what it is to be. */
import { html, setAttributes, setText } from '../dom/dom';

export interface NumberRule {
  readonly label: string;
  /** "mm", or what is counted. */
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** The slider goes no farther, for lengths that are hardly ever larger. */
  readonly slidesTo?: number;
  readonly step: number;
  /** What a value means that is not stated; without it there always is one. */
  readonly usual?: string;
  /** One sentence, shown when it is pointed at. */
  readonly hint: string;
}

export class NumberField {
  readonly element: HTMLElement;
  private readonly slider: HTMLInputElement;
  private readonly field: HTMLInputElement;
  private readonly usual = html('button', { type: 'button', class: 'tool' });

  /** @param changed hears what was set; undefined where it is to be as usual */
  constructor(rule: NumberRule, changed: (value: number | undefined) => void) {
    const { label, unit, least, most, step, slidesTo = most } = rule;
    const id = label.toLowerCase().replace(/\W+/g, '-');
    this.slider = html('input', {
      type: 'range',
      min: least,
      max: slidesTo,
      step,
      'aria-label': label,
      title: rule.hint,
    });
    this.field = html('input', { type: 'number', id, min: least, max: most, step, title: rule.hint });
    setText(this.usual, 'As usual');
    setAttributes(this.usual, { 'aria-label': `${label}: as usual`, title: rule.usual ?? '' });
    this.element = html('div', { class: 'number-field' }, [
      html('label', { for: id }, [label]),
      html('span', { class: 'number-row' }, [
        this.slider,
        this.field,
        html('span', { class: 'unit' }, [unit]),
        ...(rule.usual === undefined ? [] : [this.usual]),
      ]),
    ]);
    this.slider.addEventListener('input', () => changed(Number(this.slider.value)));
    this.field.addEventListener('change', () => {
      const value = Number(this.field.value);
      const stated = this.field.value !== '' && Number.isFinite(value);
      if (stated) changed(Math.max(least, Math.min(most, value)));
      else if (rule.usual !== undefined) changed(undefined);
    });
    this.usual.addEventListener('click', () => changed(undefined));
  }

  /** @param usually what it is where nothing is stated */
  show(stated: number | undefined, usually: number): void {
    const value = Number((stated ?? usually).toFixed(2));
    if (document.activeElement !== this.slider) this.slider.value = String(value);
    if (document.activeElement !== this.field) this.field.value = String(value);
    this.usual.disabled = stated === undefined;
    this.element.classList.toggle('is-usual', stated === undefined);
  }
}
