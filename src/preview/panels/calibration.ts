/** Asks how large a millimetre is on this screen, by a card that everybody has. */
import { html, setText } from '../dom/dom';

/** mm: cards of the format ID-1 after ISO/IEC 7810, such as bank cards. */
const CARD = { width: 85.6, height: 53.98 };

export const MM_PER_INCH = 25.4;

/** CSS pixels to the inch on the screen. */
export const MIN_PPI = 40;
export const MAX_PPI = 400;

export class Calibration {
  readonly element = html('dialog', { class: 'calibration', 'aria-labelledby': 'calibration-title' });
  private readonly card = html('div', { class: 'id-card', 'aria-hidden': 'true' });
  private readonly slider = html('input', {
    type: 'range',
    min: MIN_PPI,
    max: MAX_PPI,
    step: 0.5,
    'aria-label': 'Width of the card on the screen',
  });
  private readonly figure = html('output');

  /** @param save takes CSS pixels to the inch */
  constructor(save: (pixelsPerInch: number) => void) {
    const done = html('button', { type: 'button', class: 'tool primary' }, ['Keep']);
    const leave = html('button', { type: 'button', class: 'tool' }, ['Leave it']);
    const text =
      'Hold a bank card against the screen and draw the slider until the frame is as wide as the card. ' +
      'Arrow keys move it by a little.';
    this.element.append(
      html('h2', { id: 'calibration-title' }, ['True size on this screen']),
      html('p', {}, [text]),
      this.card,
      html('label', {}, [this.slider, this.figure]),
      html('div', { class: 'option-row' }, [done, leave]),
    );
    this.slider.addEventListener('input', () => this.draw());
    done.addEventListener('click', () => {
      save(Number(this.slider.value));
      this.element.close();
    });
    leave.addEventListener('click', () => this.element.close());
  }

  open(pixelsPerInch: number): void {
    this.slider.value = String(pixelsPerInch);
    this.draw();
    this.element.showModal();
    this.slider.focus();
  }

  private draw(): void {
    const scale = Number(this.slider.value) / MM_PER_INCH;
    this.card.style.setProperty('width', `${CARD.width * scale}px`);
    this.card.style.setProperty('height', `${CARD.height * scale}px`);
    setText(this.figure, `${Number(this.slider.value).toFixed(1)} pixels to the inch`);
  }
}
