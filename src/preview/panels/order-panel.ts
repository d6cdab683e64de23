/** Below the layers: the spray order with the fewest islands, told before it is made. */

import { count } from '../../config/values';
import type { PreviewStack } from '../../protocol/index';
import type { BestOrder, BestOrderAnswer } from '../../protocol/views';
import { html, setText, syncChildren } from '../dom/dom';

export interface OrderActions {
  ask(): Promise<BestOrderAnswer | undefined>;
  /** @param version of the document for which the order was told */
  apply(version: number): void;
  /** Something to be told aloud. */
  say(text: string): void;
}

export class OrderPanel {
  readonly element: HTMLElement;
  private readonly find = html('button', { type: 'button', class: 'tool' }, ['Fewest islands…']);
  private readonly told = html('p', { class: 'order-told' });
  private readonly list = html('ol', { class: 'best-order' });
  private readonly applyButton = html('button', { type: 'button', class: 'tool primary' }, ['Reorder']);
  private readonly cancel = html('button', { type: 'button', class: 'tool' }, ['Cancel']);
  private readonly choice = html('div', { class: 'option-row' }, [this.applyButton, this.cancel]);
  private stack: PreviewStack | undefined;
  private answer: BestOrderAnswer | undefined;
  private asking = false;
  /** The last question was not answered, as when the server starts anew. */
  private failed = false;

  private readonly actions: OrderActions;

  constructor(actions: OrderActions) {
    this.actions = actions;
    this.element = html('div', { class: 'order-panel' }, [this.find, this.told, this.list, this.choice]);
    this.find.addEventListener('click', () => void this.ask());
    this.applyButton.addEventListener('click', () => this.apply());
    this.cancel.addEventListener('click', () => this.close());
    this.element.addEventListener('keydown', (event) => {
      if (event.key !== 'Escape' || this.choice.hidden) return;
      event.stopPropagation();
      this.close();
    });
  }

  draw(stack: PreviewStack): void {
    if (stack !== this.stack) {
      this.stack = stack;
      this.forget();
    }
    this.show();
  }

  /** What was told is of the stack as it was; the focus stays within the panel. */
  private forget(): void {
    const held = this.choice.contains(document.activeElement);
    this.answer = undefined;
    this.asking = false;
    this.failed = false;
    if (held) this.find.focus();
  }

  private async ask(): Promise<void> {
    const { stack } = this;
    if (!stack || this.asking || whyNot(stack, this.answer) !== undefined) return;
    this.asking = true;
    this.show();
    const answer = await this.actions.ask();
    if (stack !== this.stack) return;
    this.asking = false;
    this.answer = answer;
    this.failed = answer === undefined;
    this.show();
    this.actions.say(this.told.textContent ?? '');
    if (!this.choice.hidden) this.applyButton.focus();
  }

  private apply(): void {
    const { answer } = this;
    if (!answer) return;
    this.find.focus();
    this.actions.apply(answer.version);
  }

  private close(): void {
    this.forget();
    this.show();
    this.find.focus();
  }

  private show(): void {
    const { stack, answer, asking } = this;
    if (!stack) return;
    const reason = whyNot(stack, answer);
    const best = reason === undefined && answer && !('refusal' in answer) ? answer : undefined;
    // A button that is disabled outright loses the focus, and nobody hears why.
    this.find.setAttribute('aria-disabled', String(reason !== undefined || asking));
    this.find.title = reason ?? 'Find the spray order that leaves the fewest islands to bridge';
    const rest = this.failed ? 'The order could not be found; try again.' : '';
    setText(this.told, asking ? 'Trying all orders…' : (reason ?? (best ? gainOf(best) : rest)));
    this.told.hidden = this.told.textContent === '';
    this.list.hidden = best === undefined;
    this.choice.hidden = best === undefined;
    syncChildren(
      this.list,
      best?.order ?? [],
      () => html('li'),
      (item, { name, now }) => {
        setText(item, now === undefined ? name : `${name} (now ${now})`);
        item.classList.toggle('moves', now !== undefined);
      },
    );
  }
}

/** Why there is no other order to be had; undefined where there may be one. */
function whyNot({ layers }: PreviewStack, answer: BestOrderAnswer | undefined): string | undefined {
  if (answer) {
    if ('refusal' in answer) return answer.refusal;
    if (!answer.change) return `This order is the best already: ${count(answer.after, 'island')} to bridge.`;
    return 'refusal' in answer.change ? `${gainOf(answer)} ${answer.change.refusal}` : undefined;
  }
  if (layers.length < 2) return 'There is only one layer.';
  return layers.every(({ islands }) => islands.length === 0) ? 'There are no islands.' : undefined;
}

function gainOf({ before, after }: BestOrder): string {
  return `${count(after, 'island')} to bridge in this order, ${before} as it is now. Later paint covers the others: cut them away, and the print stays the same.`;
}
