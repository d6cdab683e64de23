/** Asks how large a millimetre is on this screen: a line is measured with a ruler, and its length typed. */
import { html, setText } from '../dom/dom';

export const MM_PER_INCH = 25.4;

/** CSS pixels to the inch on the screen. */
const MIN_PPI = 40;
const MAX_PPI = 400;

/** CSS pixels: the line's length at most, and what of the window's width it leaves free. */
const LONGEST = 400;
const FREE = 80;

export class Calibration {
  readonly element = html('dialog', { class: 'calibration', 'aria-labelledby': 'calibration-title' });
  private readonly line = html('div', { class: 'measured-line', 'aria-hidden': 'true' });
  private readonly length = html('input', {
    type: 'number',
    step: 0.1,
    inputmode: 'decimal',
    'aria-label': 'Length of the line in mm',
    'aria-describedby': 'calibration-figure',
  });
  private readonly figure = html('output', { id: 'calibration-figure' });
  private readonly keep = html('button', { type: 'button', class: 'tool primary' }, ['Keep']);
  private pixels = LONGEST;

  /** @param save takes CSS pixels to the inch */
  constructor(save: (pixelsPerInch: number) => void) {
    const cancel = html('button', { type: 'button', class: 'tool' }, ['Cancel']);
    this.element.append(
      html('h2', { id: 'calibration-title' }, ['Calibrate screen']),
      html('p', {}, ['Measure this line with a ruler, and type what you read.']),
      this.line,
      html('label', {}, [this.length, 'mm', this.figure]),
      html('div', { class: 'option-row' }, [this.keep, cancel]),
    );
    const done = () => {
      if (!this.valid) return;
      save(this.pixelsPerInch);
      this.element.close();
    };
    this.length.addEventListener('input', () => this.draw());
    this.length.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      // Else the same key presses the button that the focus goes back to.
      event.preventDefault();
      done();
    });
    this.keep.addEventListener('click', done);
    cancel.addEventListener('click', () => this.element.close());
  }

  open(pixelsPerInch: number): void {
    this.pixels = Math.max(Math.min(LONGEST, window.innerWidth - FREE), 100);
    this.line.style.setProperty('width', `${this.pixels}px`);
    this.length.value = ((this.pixels / pixelsPerInch) * MM_PER_INCH).toFixed(1);
    this.draw();
    this.element.showModal();
    this.length.select();
  }

  /** To a tenth: a ruler is read no finer. */
  private get pixelsPerInch(): number {
    return Math.round((this.pixels / Number(this.length.value)) * MM_PER_INCH * 10) / 10;
  }

  private get valid(): boolean {
    return this.pixelsPerInch >= MIN_PPI && this.pixelsPerInch <= MAX_PPI;
  }

  private draw(): void {
    this.keep.disabled = !this.valid;
    setText(this.figure, this.valid ? `${this.pixelsPerInch.toFixed(1)} pixels per inch` : 'That cannot be right.');
  }
}
