/** A menu that opens below a button, in groups; it closes on a choice, on Escape and on a click elsewhere. */
import { html, setAttributes } from '../dom/dom';
import { Roving } from '../dom/rove';
import { type Command, isThere } from './command';
import { openBelow } from './popover';

export class Menu {
  readonly element = html('div', { class: 'menu', role: 'menu', popover: 'auto' });
  private readonly roving = new Roving(this.element, 'down');

  private readonly stays: boolean;

  /**
   * @param name is spoken when it opens
   * @param stays whether it stays open while things are switched on and off
   */
  constructor(name: string, stays = false) {
    this.stays = stays;
    setAttributes(this.element, { 'aria-label': name });
    this.element.addEventListener('keydown', ({ key }) => {
      if (key === 'Tab') this.element.hidePopover();
    });
  }

  open(button: HTMLElement, groups: readonly (readonly Command[])[]): void {
    const shown = groups.map((group) => group.filter(isThere)).filter((group) => group.length > 0);
    this.element.replaceChildren(
      ...shown.map((group) =>
        html(
          'div',
          { role: 'group' },
          group.map((command) => this.row(command)),
        ),
      ),
    );
    openBelow(this.element, button);
    this.roving.refresh();
    this.element.querySelector('button')?.focus();
  }

  private row(command: Command): HTMLElement {
    const { name, icon, hint, key, kind, isOn } = command;
    const role = { action: 'menuitem', choice: 'menuitemradio', toggle: 'menuitemcheckbox' }[kind];
    const sign = html('span', { 'aria-hidden': 'true' });
    const row = html('button', { type: 'button', role }, [
      sign,
      html('span', {}, [name]),
      ...(key === undefined ? [] : [html('kbd', { 'aria-hidden': 'true' }, [key])]),
    ]);
    const draw = () => {
      const on = isOn?.() === true;
      setAttributes(sign, { class: `codicon codicon-${on ? 'check' : icon}` });
      if (kind !== 'action') setAttributes(row, { 'aria-checked': String(on) });
    };
    draw();
    if (hint !== undefined) row.title = hint;
    row.addEventListener('click', () => {
      if (!this.stays || kind === 'action') this.element.hidePopover();
      command.run();
      draw();
    });
    return row;
  }
}
