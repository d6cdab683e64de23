/** Below the layers: what cutting takes, the order of the cuts, and the files that are written. */
import { count } from '../../config/values';
import type { LayerId } from '../../engine/index';
import type { CutFigures, CutOrder, SheetFigures } from '../../protocol/cutting';
import type { PreviewStack } from '../../protocol/index';
import { formatDuration } from '../../sheet/cutting-time';
import { html, setAttributes, setText, syncChildren } from '../dom/dom';
import { CutCourse } from './cut-course';
import { CutPlayer } from './cut-player';

export interface CutPanelActions {
  figures(): Promise<CutFigures | undefined>;
  order(layer: LayerId): Promise<CutOrder | undefined>;
  /** A sheet is taken in hand. */
  choose(sheet: number): void;
  /** The cuts of the sheet in hand shall be seen, or not any more. */
  show(shown: boolean): void;
  /** The tool has come another way. */
  moved(): void;
  writeCut(): void;
  writeJob(): void;
  /** Something to be told aloud. */
  say(text: string): void;
}

/** The course of the cuts in one layer's sheet, drawn as far as the tool has come. */
export interface ShownCourse {
  readonly layer: number;
  readonly course: CutCourse;
  /** mm of travel so far */
  readonly way: number;
}

export class CutPanel {
  readonly element: HTMLDetailsElement;
  private readonly rows = html('tbody');
  private readonly sum = html('tfoot', {}, [makeRow()]);
  private readonly told = html('p', { class: 'told', 'aria-live': 'polite' });
  private readonly showButton = html('button', { type: 'button', class: 'tool', 'aria-pressed': 'false' }, [
    'Show cut order',
  ]);
  private readonly player: CutPlayer;
  private stack: PreviewStack | undefined;
  private figures: CutFigures | undefined;
  private order: { readonly layer: LayerId; readonly course: CutCourse } | undefined;
  /** What was asked for and is not there yet. */
  private asking = false;
  private askingOrder: LayerId | undefined;
  private wanted = false;
  /** Whether the order is of an earlier state of the stack: it is seen until the next one is there. */
  private isOld = false;

  private readonly actions: CutPanelActions;

  constructor(actions: CutPanelActions) {
    this.actions = actions;
    this.player = new CutPlayer({ moved: () => actions.moved(), say: (text) => actions.say(text) });
    this.player.element.hidden = true;
    this.showButton.addEventListener('click', () => this.want(!this.wanted));
    this.rows.addEventListener('click', ({ target }) => {
      const row = target instanceof Element ? target.closest('tr') : null;
      if (row) actions.choose([...this.rows.children].indexOf(row));
    });
    const button = (name: string, run: () => void): HTMLButtonElement => {
      const made = html('button', { type: 'button', class: 'tool' }, [name]);
      made.addEventListener('click', run);
      return made;
    };
    const head = html('thead', {}, [
      html(
        'tr',
        {},
        ['Sheet', 'Cuts', 'Length', 'Time'].map((name) => html('th', { scope: 'col' }, [name])),
      ),
    ]);
    this.element = html('details', { class: 'cutting' }, [
      html('summary', {}, [html('h2', {}, ['Cutting'])]),
      html('table', { 'aria-label': 'What cutting takes' }, [head, this.rows, this.sum]),
      this.told,
      html('div', { class: 'option-row' }, [this.showButton]),
      this.player.element,
      html('div', { class: 'option-row' }, [
        button('Write cut files…', () => actions.writeCut()),
        button('Page for the wall…', () => actions.writeJob()),
      ]),
    ]);
  }

  /** Whether it is open and in sight. */
  get shown(): boolean {
    return this.element.open && this.element.offsetParent !== null;
  }

  /** The cuts that are to be seen, and how far the tool has come; undefined where none are. */
  get drawing(): ShownCourse | undefined {
    const { order, stack, wanted, player } = this;
    if (!wanted || !order || !this.shown) return undefined;
    const layer = stack?.layers.findIndex(({ id }) => id === order.layer) ?? -1;
    return layer < 0 ? undefined : { layer, course: order.course, way: player.played };
  }

  /**
   * @param sheet the index of the layer in hand
   * @param single whether its sheet alone is shown
   */
  draw(stack: PreviewStack, sheet: number, single: boolean): void {
    if (stack !== this.stack) this.renew(stack);
    // Another way of looking puts the cuts away.
    if (!single) this.drop();
    if (!this.shown) this.player.pause();
    if (this.shown && !this.figures && !this.asking) void this.ask(stack);
    const layer = stack.layers[sheet]?.id;
    if (this.wanted && this.shown && layer !== undefined && (layer !== this.order?.layer || this.isOld))
      void this.askOrder(stack, layer);
    this.write(stack, sheet);
  }

  private renew(stack: PreviewStack): void {
    this.stack = stack;
    this.figures = undefined;
    this.asking = false;
    this.askingOrder = undefined;
    this.isOld = true;
  }

  private want(wanted: boolean): void {
    this.wanted = wanted;
    if (!wanted) this.player.show(undefined);
    else if (this.order) this.player.show(this.order.course);
    this.actions.show(wanted);
  }

  private drop(): void {
    if (!this.wanted) return;
    this.wanted = false;
    this.player.show(undefined);
  }

  private async ask(stack: PreviewStack): Promise<void> {
    this.asking = true;
    const figures = await this.actions.figures();
    if (stack !== this.stack) return;
    this.asking = figures === undefined;
    this.figures = figures;
    this.actions.moved();
    this.write(stack, undefined);
  }

  private async askOrder(stack: PreviewStack, layer: LayerId): Promise<void> {
    if (this.askingOrder === layer) return;
    this.askingOrder = layer;
    const order = await this.actions.order(layer);
    if (stack !== this.stack || this.askingOrder !== layer || !order) return;
    const isSame = layer === this.order?.layer;
    this.askingOrder = undefined;
    this.isOld = false;
    this.order = { layer, course: new CutCourse(order) };
    if (!this.wanted) return;
    this.player.show(this.order.course, isSame);
    if (!isSame) this.actions.say(`Cut order of ${count(order.cuts.length, 'cut')}`);
  }

  /** @param sheet the one in hand; undefined where that has not changed */
  private write({ layers }: PreviewStack, sheet: number | undefined): void {
    const figures = this.figures?.sheets ?? [];
    syncChildren(this.rows, layers, makeSheetRow, (row, { id, name }, index) => {
      writeRow(
        row,
        `${index + 1}. ${name}`,
        figures.find(({ layer }) => layer === id),
      );
      if (sheet !== undefined) setAttributes(row, { 'aria-current': String(index === sheet) });
    });
    const [sum] = this.sum.children;
    if (sum) writeRow(sum, 'All', figures.length > 0 ? sumOf(figures) : undefined);
    setAttributes(this.showButton, { 'aria-pressed': String(this.wanted) });
    setText(this.told, toldOf(figures, this.asking));
  }
}

type Figures = Omit<SheetFigures, 'layer'>;

function sumOf(sheets: readonly Figures[]): Figures {
  const sum = (of: (sheet: Figures) => number) => sheets.reduce((all, sheet) => all + of(sheet), 0);
  const timed = sheets.every(({ seconds }) => seconds !== undefined);
  return {
    cuts: sum(({ cuts }) => cuts),
    length: sum(({ length }) => length),
    travel: sum(({ travel }) => travel),
    seconds: timed ? sum(({ seconds }) => seconds ?? 0) : undefined,
  };
}

function makeRow(): HTMLTableRowElement {
  return html('tr', {}, [html('th', { scope: 'row' }), ...[0, 1, 2].map(() => html('td'))]);
}

/** Its name takes the sheet in hand. */
function makeSheetRow(): HTMLTableRowElement {
  const row = makeRow();
  row.firstElementChild?.append(html('button', { type: 'button' }));
  return row;
}

function writeRow(row: Element, name: string, figures: Figures | undefined): void {
  const { seconds } = figures ?? {};
  const texts = figures
    ? [String(figures.cuts), metres(figures.length), seconds === undefined ? '–' : formatDuration(seconds)]
    : ['…', '…', '…'];
  [name, ...texts].forEach((text, i) => {
    const cell = row.children[i];
    if (cell) setText(cell.querySelector('button') ?? cell, text);
  });
}

const metres = (length: number): string => `${(length / 1000).toFixed(2)} m`;

function toldOf(sheets: readonly Figures[], asking: boolean): string {
  if (sheets.length === 0) return asking ? 'Looking for short ways…' : '';
  const { travel, seconds } = sumOf(sheets);
  const ways = `${metres(travel)} of ways between cuts`;
  return seconds === undefined
    ? `${ways}. For the time, state "speed" and "acceleration" of the cutter in tombolo.json.`
    : `Cutting takes about ${formatDuration(seconds)} in all, with ${ways}.`;
}
