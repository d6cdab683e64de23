/**
 * One tab stop for a group of controls; arrow keys go from one to the next, Home and End to the first and the last.
 * WAI-ARIA Authoring Practices, "Managing focus within components using a roving tabindex".
 */

const KEYS = {
  across: { ArrowLeft: -1, ArrowRight: 1 },
  down: { ArrowUp: -1, ArrowDown: 1 },
} as const;

export class Roving {
  private readonly group: HTMLElement;
  private last: HTMLElement | undefined;

  /** @param way how the controls lie, and so which arrow keys go from one to the next */
  constructor(group: HTMLElement, way: keyof typeof KEYS) {
    this.group = group;
    const steps: Readonly<Record<string, number>> = KEYS[way];
    group.addEventListener('keydown', (event) => {
      const items = this.items();
      const at = items.indexOf(event.target as HTMLElement);
      if (at < 0 || event.ctrlKey || event.metaKey || event.altKey) return;
      const step = steps[event.key];
      const to = step !== undefined ? at + step : event.key === 'Home' ? 0 : event.key === 'End' ? -1 : undefined;
      if (to === undefined) return;
      event.preventDefault();
      items.at(to % items.length)?.focus();
    });
    group.addEventListener('focusin', ({ target }) => {
      if (target instanceof HTMLElement && this.items().includes(target)) this.stopAt(target);
    });
  }

  /** After controls have come or gone: one of those that show is the tab stop. */
  refresh(): void {
    const items = this.items();
    const stop = this.last && items.includes(this.last) ? this.last : items[0];
    if (stop) this.stopAt(stop);
  }

  private stopAt(stop: HTMLElement): void {
    this.last = stop;
    for (const item of this.items()) item.tabIndex = item === stop ? 0 : -1;
  }

  private items(): HTMLElement[] {
    const buttons = [...this.group.querySelectorAll<HTMLButtonElement>('button')];
    return buttons.filter((button) => !button.disabled && button.closest('[hidden]') === null);
  }
}
