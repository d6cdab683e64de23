/** Where the picture ends and the print begins: a line across both that is dragged, or moved by the arrow keys. */
import { html, setAttributes } from '../dom/dom';

/** Of the width, by an arrow key, and by Page Up and Page Down. */
const STEP = 0.02;
const LEAP = 0.1;

export class Wipe {
  readonly element = html('div', {
    class: 'wipe',
    role: 'slider',
    tabindex: 0,
    'aria-label': 'Wipe: picture on the left, print on the right',
    'aria-orientation': 'horizontal',
    'aria-valuemin': 0,
    'aria-valuemax': 100,
  });
  private readonly frame: HTMLElement;
  private share = 0.5;

  /** @param frame what it goes across; its style says how much of the picture is seen */
  constructor(frame: HTMLElement) {
    this.frame = frame;
    this.element.append(html('span', { class: 'grip', 'aria-hidden': 'true' }));
    this.element.addEventListener('keydown', (event) => this.onKey(event));
    this.element.addEventListener('pointerdown', (event) => {
      this.element.setPointerCapture(event.pointerId);
      this.element.focus();
      event.preventDefault();
    });
    this.element.addEventListener('pointermove', (event) => {
      if (this.element.hasPointerCapture(event.pointerId)) this.follow(event.clientX);
    });
    this.set(this.share);
  }

  private onKey(event: KeyboardEvent): void {
    const to = {
      ArrowLeft: this.share - STEP,
      ArrowDown: this.share - STEP,
      ArrowRight: this.share + STEP,
      ArrowUp: this.share + STEP,
      PageUp: this.share + LEAP,
      PageDown: this.share - LEAP,
      Home: 0,
      End: 1,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    this.set(to);
  }

  private follow(x: number): void {
    const { left, width } = this.frame.getBoundingClientRect();
    if (width > 0) this.set((x - left) / width);
  }

  private set(to: number): void {
    this.share = Math.max(0, Math.min(1, to));
    const percent = Math.round(100 * this.share);
    this.frame.style.setProperty('--wipe', `${100 * this.share}%`);
    setAttributes(this.element, { 'aria-valuenow': percent, 'aria-valuetext': `${percent} % picture` });
  }
}
