/** One row of icon buttons with names. What finds no room in it stands in the menu at its end. */
import { html, setAttributes } from '../dom/dom';
import { Roving } from '../dom/rove';
import { type Command, type CommandGroup, isThere, stateOf, tooltipOf } from './command';
import { Menu } from './menu';
import { openBelow, opens } from './popover';

export interface ToolbarGroup extends CommandGroup {
  /** Where room is short, the group with the lowest goes into the menu first. */
  readonly rank: number;
  /** A figure that stands after the first button. */
  readonly figure?: HTMLElement;
}

export interface ToolbarPanel {
  readonly button: Command;
  /** What opens below the button. */
  readonly panel: HTMLElement;
}

interface Shown {
  readonly group: ToolbarGroup;
  readonly element: HTMLElement;
  readonly buttons: readonly { readonly command: Command; readonly button: HTMLButtonElement }[];
}

export class Toolbar {
  readonly element = html('div', { class: 'toolbar', role: 'toolbar', 'aria-label': 'Stencil Preview' });
  private readonly roving = new Roving(this.element, 'across');
  private readonly groups: readonly Shown[];
  private readonly more = new Menu('More');
  private readonly rest: readonly (readonly Command[])[];
  private readonly ends: readonly HTMLElement[];

  /** @param rest what always stands in the menu, in groups */
  constructor(groups: readonly ToolbarGroup[], { button, panel }: ToolbarPanel, rest: readonly (readonly Command[])[]) {
    this.groups = groups.map(makeGroup);
    this.rest = rest;
    const opener = makeButton(button);
    opens(opener, panel, () => openBelow(panel, opener));
    const more = makeButton(MORE);
    setAttributes(more, { 'aria-haspopup': 'menu' });
    opens(more, this.more.element, () => this.more.open(more, this.menuGroups()));
    this.ends = [html('span', { class: 'tool-group ends' }, [opener, more])];
    this.element.append(...this.groups.map(({ element }) => element), ...this.ends, panel, this.more.element);
    new ResizeObserver(() => this.arrange()).observe(this.element);
  }

  draw(): void {
    for (const { buttons } of this.groups) {
      for (const { command, button } of buttons) {
        setAttributes(button, stateOf(command));
        button.hidden = !isThere(command);
      }
    }
    this.arrange();
  }

  /** Hides groups, the least wanted first, until the others stand in one row. */
  private arrange(): void {
    const { element, groups } = this;
    for (const group of groups) group.element.hidden = false;
    for (const group of [...groups].sort((a, b) => a.group.rank - b.group.rank)) {
      if (element.scrollWidth <= element.clientWidth) break;
      group.element.hidden = true;
    }
    this.roving.refresh();
  }

  private menuGroups(): (readonly Command[])[] {
    return [...this.groups.filter(({ element }) => element.hidden).map(({ group }) => group.commands), ...this.rest];
  }
}

const MORE: Command = { name: 'More', icon: 'ellipsis', kind: 'action', run: () => undefined };

function makeGroup(group: ToolbarGroup): Shown {
  const buttons = group.commands.map((command) => ({ command, button: makeButton(command) }));
  const [first, ...others] = buttons.map(({ button }) => button);
  const role = group.commands.every(({ kind }) => kind === 'choice') ? 'radiogroup' : 'group';
  const children = [first, group.figure, ...others].filter((child) => child !== undefined);
  return {
    group,
    buttons,
    element: html('span', { class: 'tool-group', role, 'aria-label': group.name }, children),
  };
}

function makeButton(command: Command): HTMLButtonElement {
  const button = html(
    'button',
    {
      type: 'button',
      class: 'tool icon-tool',
      'aria-label': command.name,
      title: tooltipOf(command),
      ...(command.kind === 'choice' && { role: 'radio' }),
      ...stateOf(command),
    },
    [html('span', { class: `codicon codicon-${command.icon}`, 'aria-hidden': 'true' })],
  );
  button.addEventListener('click', () => command.run());
  return button;
}
