/** The head of the list of findings: how many there are, and a menu of checks and layers to leave out. */
import type { PreviewStack } from '../../protocol/index';
import { html, setAttributes, setText } from '../dom/dom';
import { type BenchState, type FindingFilter, layerKeys, NO_FILTER } from '../state/state';
import type { Command } from './command';
import { Menu } from './menu';
import { opens } from './popover';

export class FindingFilterHead {
  readonly element: HTMLElement;
  private readonly heading = html('h2');
  private readonly icon = html('span', { 'aria-hidden': 'true' });
  private readonly button = html('button', {
    type: 'button',
    class: 'tool icon-tool',
    'aria-label': 'Filter findings',
    title: 'Filter findings by check and layer',
    'aria-haspopup': 'menu',
  });
  private readonly menu = new Menu('Filter findings', true);
  private stack: PreviewStack | undefined;
  private filter: FindingFilter = NO_FILTER;

  constructor(change: (change: Partial<BenchState>) => void) {
    this.button.append(this.icon);
    opens(this.button, this.menu.element, () => this.menu.open(this.button, this.rows(change)));
    this.element = html('div', { class: 'list-head' }, [this.heading, this.button, this.menu.element]);
  }

  draw(stack: PreviewStack, { filter }: BenchState, shown: number): void {
    [this.stack, this.filter] = [stack, filter];
    const all = stack.findings.length;
    setText(
      this.heading,
      all === 0 ? 'Findings: none' : `Findings: ${shown === all ? all : `${shown} of ${all} shown`}`,
    );
    const filters = filter.checks.length + filter.layers.length > 0;
    setAttributes(this.icon, { class: `codicon codicon-${filters ? 'filter-filled' : 'filter'}` });
    setAttributes(this.button, { 'aria-pressed': String(filters) });
    this.button.disabled = all === 0 && !filters;
  }

  private rows(change: (change: Partial<BenchState>) => void): Command[][] {
    const { stack } = this;
    if (!stack) return [];
    const keys = layerKeys(stack);
    const checks = [...new Set(stack.findings.map(({ check }) => check))].sort();
    const layers = [...new Set(stack.findings.flatMap(({ layer }) => keys[layer ?? -1] ?? []))];
    const toggle = (of: keyof FindingFilter, name: string): Command => ({
      name,
      icon: 'blank',
      kind: 'toggle',
      isOn: () => !this.filter[of].includes(name),
      run: () => change({ filter: { ...this.filter, [of]: toggled(this.filter[of], name) } }),
    });
    const all: Command = {
      name: 'Show all',
      icon: 'clear-all',
      kind: 'action',
      run: () => change({ filter: NO_FILTER }),
    };
    return [checks.map((check) => toggle('checks', check)), layers.map((layer) => toggle('layers', layer)), [all]];
  }
}

function toggled(names: readonly string[], name: string): string[] {
  return names.includes(name) ? names.filter((other) => other !== name) : [...names, name];
}
