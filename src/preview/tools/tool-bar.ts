/** The row of tools that work on the picture itself. */

import { html } from '../dom/dom';
import type { Calibration } from '../panels/calibration';

export interface ToolButtonsActions {
  calibrate(): void;
  bed(shown: boolean): void;
}

export class ToolButtons {
  readonly element: HTMLElement;
  private readonly bed: HTMLElement;

  constructor(choice: HTMLElement, calibration: Calibration, actions: ToolButtonsActions) {
    const calibrate = html('button', { type: 'button', class: 'tool' }, ['Measure the screen…']);
    calibrate.addEventListener('click', () => actions.calibrate());
    const input = html('input', { type: 'checkbox' });
    input.addEventListener('change', () => actions.bed(input.checked));
    this.bed = html('label', {}, [input, 'Bed']);
    this.element = html('div', { class: 'hand-tools', role: 'group', 'aria-label': 'On the picture' }, [
      choice,
      this.bed,
      calibrate,
      calibration.element,
    ]);
  }

  /** @param bed of the cutter, where the project says it */
  draw(bed: readonly [number, number] | undefined): void {
    this.bed.hidden = bed === undefined;
  }
}
