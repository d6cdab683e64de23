/** The bar in the lower left corner of the picture's window that says how long so many millimetres are. */
import { setAttributes, setText, svg } from '../dom/dom';
import { millimetres, scaleBarLength } from '../dom/scale-steps';
import type { Size, Viewport } from '../state/viewport';

/** CSS pixels from the corner. */
const FROM_LEFT = 14;
const FROM_BOTTOM = 9;

/** CSS pixels that the bar may take, in a narrow window and in a wide one: of steps up to 2.5 apart one always fits its label. */
const NARROW = 125;
const WIDE = 160;

export class ScaleBar {
  readonly element = svg('g', { class: 'scale', 'aria-hidden': 'true' });
  private readonly plate = svg('rect', { class: 'plate', height: 24, rx: 4 });
  private readonly bar = svg('path', { class: 'scale-bar' });
  private readonly label = svg('text', { class: 'scale-label' });

  constructor() {
    this.element.append(this.plate, this.bar, this.label);
  }

  draw(view: Viewport, { width, height }: Size): void {
    const length = scaleBarLength(Math.min(Math.max(width * 0.3, NARROW), WIDE), view.scale);
    const [x, y, pixels] = [FROM_LEFT, height - FROM_BOTTOM, length * view.scale];
    setAttributes(this.plate, { x: x - 8, y: y - 18, width: pixels + 16 });
    setAttributes(this.bar, { d: `M${crisp(x)} ${crisp(y) - 5}v5h${Math.round(pixels)}v-5` });
    setAttributes(this.label, { x: x + pixels / 2, y: y - 4 });
    setText(this.label, `${millimetres(length)} mm`);
  }
}

/** Lines one pixel wide are sharp in the middle of a pixel. */
const crisp = (pixels: number): number => Math.round(pixels) + 0.5;
