/** The bar below the picture that says what would come of a bridge, and lets the artist have it or not. */

import { html, setText } from '../dom/dom';

export interface BarContent {
  readonly sentence: string;
  /** What Enter does, too; without it there is nothing to have. */
  readonly apply?: BarAction;
  readonly drop: BarAction;
  /** It only tells what was done: the pointer may go on working, and a new text leaves it where it is. */
  readonly notice?: true;
}

interface BarAction {
  readonly label: string;
  run(): void;
}

export class BridgeBar {
  readonly element: HTMLElement;
  private readonly sentence = html('p');
  private readonly applyButton = html('button', { type: 'button', class: 'tool primary' });
  private readonly dropButton = html('button', { type: 'button', class: 'tool' });
  private content: BarContent | undefined;

  private readonly say: (sentence: string) => void;
  private readonly focusPicture: () => void;

  /**
   * @param say speaks a sentence: a bar that was hidden until now is not heard
   * @param focusPicture takes the focus that a button has, when the button goes
   */
  constructor(say: (sentence: string) => void, focusPicture: () => void) {
    this.say = say;
    this.focusPicture = focusPicture;

    this.applyButton.addEventListener('click', () => this.content?.apply?.run());
    this.dropButton.addEventListener('click', () => this.content?.drop.run());
    this.element = html('div', { class: 'ghost-bar', role: 'group', 'aria-label': 'Bridge' }, [
      this.sentence,
      this.applyButton,
      this.dropButton,
    ]);
    this.element.hidden = true;
  }

  /** @param content undefined takes the bar away */
  show(content: BarContent | undefined): void {
    const spoken = content && content.sentence !== this.content?.sentence ? content.sentence : undefined;
    this.content = content;
    const held = this.element.contains(document.activeElement);
    this.element.hidden = content === undefined;
    this.applyButton.hidden = content?.apply === undefined;
    if (content) {
      setText(this.sentence, content.sentence);
      setText(this.applyButton, content.apply?.label ?? '');
      setText(this.dropButton, content.drop.label);
    }
    if (held && (!content || this.applyButton.hidden)) this.focusPicture();
    if (spoken !== undefined) this.say(spoken);
  }

  get shown(): boolean {
    return this.content !== undefined;
  }

  /** Whether it waits for an answer. */
  get asks(): boolean {
    return this.content !== undefined && !this.content.notice;
  }

  /** Takes away what only tells what was done. @returns whether it did */
  dropNotice(): boolean {
    if (!this.content?.notice) return false;
    this.show(undefined);
    return true;
  }

  /** @returns false where there is nothing to have */
  apply(): boolean {
    if (!this.asks || !this.content?.apply) return false;
    this.content.apply.run();
    return true;
  }

  /** @returns false where there is nothing to drop */
  drop(): boolean {
    this.content?.drop.run();
    return this.content !== undefined;
  }

  /** Says what was done and how it is taken back. */
  tellDone(what: string, undo: () => void, it = 'it'): void {
    this.show({
      sentence: `${what} ${undoKey()} takes ${it} back.`,
      apply: { label: 'Undo', run: undo },
      drop: { label: 'Close', run: () => this.show(undefined) },
      notice: true,
    });
  }
}

function undoKey(): string {
  return /Mac/.test(navigator.platform) ? '⌘Z' : 'Ctrl+Z';
}
