/** What keeps the picture from being what the artist expects: its file is gone, or its configuration is broken. */
import { CONFIG_NAME } from '../../config/types';
import { count } from '../../config/values';
import type { PreviewStack } from '../../protocol/index';
import { html, setText } from '../dom/dom';

export class Warnings {
  readonly element = html('div', { class: 'notice', role: 'status' });
  private readonly text = html('p');

  constructor() {
    this.element.append(this.text);
    this.element.hidden = true;
  }

  draw({ configErrors = 0 }: PreviewStack): void {
    this.element.hidden = configErrors === 0;
    const errors = count(configErrors, 'error');
    setText(this.text, `${CONFIG_NAME} has ${errors}: what it got wrong is left out, and defaults are used.`);
  }

  /** Until the next stack is shown. */
  gone(name: string): void {
    this.element.hidden = false;
    setText(this.text, `${name} is gone: it was deleted, moved or renamed. This is how it was last.`);
  }
}
