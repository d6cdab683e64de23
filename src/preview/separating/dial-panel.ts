/** The dials: sizes in mm, numbers, and what is on or off. */
import type { PictureDials, ShownSeparation } from '../../protocol/separating';
import { html } from '../dom/dom';
import { NumberField, type NumberRule } from './number-field';
import { MOST_COLOURS } from './palette';

type Change = (change: (dials: PictureDials) => PictureDials) => void;

const WIDTH: NumberRule = {
  label: 'Width of the print',
  unit: 'mm',
  least: 10,
  most: 5000,
  slidesTo: 500,
  step: 1,
  hint: 'How wide the sheets are cut.',
};
const COLOURS: NumberRule = {
  label: 'Number of paints',
  unit: '',
  least: 1,
  most: MOST_COLOURS,
  slidesTo: 12,
  step: 1,
  hint: 'How many colours are sprayed.',
};
const DETAIL: NumberRule = {
  label: 'Least detail',
  unit: 'mm',
  least: 0.2,
  most: 50,
  slidesTo: 6,
  step: 0.1,
  usual: 'What the material bears; of photos half as much again',
  hint: 'Nothing finer is cut or left standing.',
};
const FOLLOW: NumberRule = {
  label: 'How far curves may stray',
  unit: 'mm',
  least: 0.01,
  most: 5,
  slidesTo: 1,
  step: 0.01,
  usual: 'Half a pixel of a drawing, a pixel of a photo',
  hint: 'Less follows the picture more closely, in more curves.',
};

export class DialPanel {
  private readonly width: NumberField;
  private readonly colours: NumberField;
  private readonly detail: NumberField;
  private readonly follow: NumberField;
  private readonly outline: HTMLInputElement;
  /** The dials of size and colour, which come first, and the others. */
  readonly first: readonly HTMLElement[];
  readonly others: readonly HTMLElement[];

  constructor(change: Change) {
    this.width = new NumberField(WIDTH, (width) => change((dials) => ({ ...dials, width: width ?? dials.width })));
    this.colours = new NumberField(COLOURS, (colours) =>
      change((dials) => ({ ...dials, colours: Math.max(dials.paints.length, Math.round(colours ?? dials.colours)) })),
    );
    this.detail = new NumberField(DETAIL, (detail) => change((dials) => ({ ...dials, detail })));
    this.follow = new NumberField(FOLLOW, (follow) => change((dials) => ({ ...dials, follow })));
    const outline = checkbox('Darkest paint last, as an outline', (on) =>
      change((dials) => ({ ...dials, outline: on })),
    );
    this.outline = outline.input;
    this.first = [this.width.element, this.colours.element];
    this.others = [this.detail.element, this.follow.element, outline.element];
  }

  show(dials: PictureDials, shown: ShownSeparation | undefined): void {
    this.width.show(dials.width, dials.width);
    this.colours.show(dials.colours, dials.colours);
    this.detail.show(dials.detail, shown?.detail ?? 1);
    this.follow.show(dials.follow, shown?.follow ?? 0.1);
    this.outline.checked = dials.outline;
  }
}

export function checkbox(
  label: string,
  changed: (on: boolean) => void,
): { element: HTMLElement; input: HTMLInputElement } {
  const input = html('input', { type: 'checkbox' });
  input.addEventListener('change', () => changed(input.checked));
  return { element: html('label', { class: 'check-row' }, [input, html('span', {}, [label])]), input };
}
