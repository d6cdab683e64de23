/** Says over the picture that the print is shown out of register, and puts it back. */
import type { PreviewStack } from '../../protocol/index';
import { html, setText } from '../dom/dom';
import { isSlipped, type Slip } from '../state/slip';
import { type BenchState, layerKeys } from '../state/state';

export class RegisterChip {
  readonly element: HTMLElement;
  private readonly text = html('span');

  constructor(reset: () => void) {
    const button = html('button', { type: 'button', class: 'tool' }, ['Reset']);
    button.addEventListener('click', reset);
    this.element = html('div', { class: 'register-chip', role: 'group', 'aria-label': 'Misregistration' }, [
      this.text,
      button,
    ]);
    this.element.hidden = true;
  }

  /** @param panelShown whether the sliders that say the same are in sight */
  draw(stack: PreviewStack, { mode, slips }: BenchState, panelShown: boolean): void {
    const slipped = layerKeys(stack).flatMap((key) => {
      const slip = slips[key];
      return slip && isSlipped(slip) ? [{ key, slip }] : [];
    });
    this.element.hidden = panelShown || mode !== 'print' || slipped.length === 0;
    const [first] = slipped;
    if (!first) return;
    const what = slipped.length === 1 ? `${first.key} ${amountOf(first.slip)}` : `${slipped.length} sheets`;
    setText(this.text, `Print shown with ${what} out of register`);
  }
}

/** "0.4 mm", "0.4 mm and 1.5°" */
function amountOf({ x, y, turn }: Slip): string {
  const shift = Math.hypot(x, y);
  const parts = [shift > 0 ? `${Number(shift.toFixed(2))} mm` : '', turn === 0 ? '' : `${Math.abs(turn)}°`];
  return parts.filter((part) => part !== '').join(' and ');
}
