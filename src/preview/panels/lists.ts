/** The lists beside the picture: all in sight where there is room, else one at a time, chosen by tabs. */
import { html, setAttributes, setText } from '../dom/dom';
import { Roving } from '../dom/rove';
import type { Arrangement } from '../state/arrangement';

export interface ListSection {
  readonly id: string;
  /** On its tab; a count may follow. */
  readonly title: string;
  /** Stands for a long title where tabs have little room. */
  readonly short?: string;
  readonly element: HTMLElement;
}

interface Tabbed extends ListSection {
  readonly tab: HTMLButtonElement;
  readonly panel: HTMLElement;
}

export class Lists {
  readonly element = html('div', { class: 'lists' });
  private readonly tabs = html('div', { class: 'tabs', role: 'tablist', 'aria-label': 'Lists' });
  private readonly roving = new Roving(this.tabs, 'across');
  private readonly sections: readonly Tabbed[];
  private chosen: string;
  private tabbed = false;

  private readonly changed: () => void;

  /**
   * @param columns sections that stand one over the other in each column, where there are columns
   * @param changed is called when another section has come into sight
   */
  constructor(columns: readonly (readonly ListSection[])[], first: string, changed: () => void) {
    this.chosen = first;
    this.changed = changed;
    const made = columns.map((column) => column.map((section) => this.makeSection(section)));
    this.sections = made.flat();
    const inTabOrder = [...this.sections].sort((a, b) => Number(b.id === first) - Number(a.id === first));
    this.tabs.append(...inTabOrder.map(({ tab }) => tab));
    this.element.append(
      this.tabs,
      ...made.map((column) =>
        html(
          'div',
          { class: 'list-column' },
          column.map(({ panel }) => panel),
        ),
      ),
    );
    this.show();
  }

  arrange({ kind }: Arrangement): void {
    this.tabbed = kind === 'tabs';
    this.show();
  }

  /** How many there are in a section. */
  count(id: string, count: number): void {
    const section = this.sections.find((each) => each.id === id);
    if (section?.tab.lastElementChild) setText(section.tab.lastElementChild, String(count));
  }

  private makeSection(section: ListSection): Tabbed {
    const { id, title, short = title, element } = section;
    const words = [html('span', { class: 'tab-title' }, [title]), html('span', { class: 'tab-short' }, [short])];
    const count = html('span', { class: 'tab-count' });
    const tab = html('button', { type: 'button', role: 'tab', id: `tab-${id}`, title, 'aria-controls': `list-${id}` }, [
      ...words,
      ' ',
      count,
    ]);
    tab.addEventListener('click', () => this.choose(id));
    tab.addEventListener('focus', () => this.choose(id));
    const panel = html('section', { id: `list-${id}`, class: 'list-section', 'aria-label': title }, [element]);
    return { ...section, tab, panel };
  }

  /** Brings a section into sight, where only one is. */
  choose(id: string): void {
    const section = this.sections.find((each) => each.id === id);
    if (!section || id === this.chosen) return;
    this.chosen = id;
    this.show();
    this.changed();
  }

  /** Whether a section has anything to show. */
  offer(id: string, there: boolean): void {
    const section = this.sections.find((each) => each.id === id);
    if (!section || section.tab.hidden === !there) return;
    section.tab.hidden = !there;
    if (!there && this.chosen === id) this.chosen = this.sections.find(({ tab }) => !tab.hidden)?.id ?? id;
    this.show();
  }

  private show(): void {
    this.tabs.hidden = !this.tabbed;
    for (const { id, tab, panel } of this.sections) {
      const shown = id === this.chosen;
      setAttributes(tab, { 'aria-selected': String(shown) });
      panel.hidden = this.tabbed && !shown;
      // A tab is opened to see what is in it.
      if (this.tabbed && shown) panel.querySelector('details')?.setAttribute('open', '');
      if (this.tabbed) setAttributes(panel, { role: 'tabpanel' });
      else panel.removeAttribute('role');
    }
    this.roving.refresh();
  }
}
