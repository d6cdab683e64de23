/** The palette in spray order: a row for each paint, with what can be done to it. */
import type { PictureDials, ShownLayer, ShownSeparation } from '../../protocol/separating';
import { html, setAttributes, setText, syncChildren } from '../dom/dom';
import type { Command } from '../panels/command';
import { Menu } from '../panels/menu';
import { isFixed, withFixed, withLeftOut, withMerged, withMoved, withPaint } from './palette';
import { iconButton } from './stage';

export interface PaintListHost {
  readonly dials: PictureDials;
  readonly shown: ShownSeparation | undefined;
  change(dials: PictureDials): void;
  /** Has a colour picked from the picture. */
  pick(done: (colour: string) => void): void;
}

export class PaintList {
  private readonly host: PaintListHost;
  private readonly rows = html('ol', { class: 'paints', 'aria-label': 'Paints, first sprayed first' });
  private readonly menu = new Menu('What to do with the paint');
  readonly rowOf = new WeakMap<Element, PaintRow>();
  private dragged: string | undefined;
  readonly element = html('div', {}, [this.rows, this.menu.element]);

  constructor(host: PaintListHost) {
    this.host = host;
  }

  show(layers: readonly ShownLayer[]): void {
    syncChildren(
      this.rows,
      layers,
      () => new PaintRow(this).element,
      (element, layer, at) => this.rowOf.get(element)?.show(layer, at, isFixed(this.host.dials, layer.paint)),
    );
  }

  change(change: (dials: PictureDials) => PictureDials): void {
    this.host.change(change(this.host.dials));
  }

  move(paint: string, by: number): void {
    this.change((dials) => withMoved(dials, this.host.shown?.layers ?? [], paint, by));
  }

  startDrag(paint: string): void {
    this.dragged = paint;
  }

  dropOn(paint: string): void {
    const order = (this.host.shown?.layers ?? []).map((layer) => layer.paint);
    const { dragged } = this;
    this.dragged = undefined;
    if (dragged !== undefined) this.move(dragged, order.indexOf(paint) - order.indexOf(dragged));
  }

  openMenu(button: HTMLElement, paint: string): void {
    const layers = this.host.shown?.layers ?? [];
    const at = layers.findIndex((layer) => layer.paint === paint);
    const action = (name: string, icon: string, run: () => void): Command => ({ name, icon, kind: 'action', run });
    this.menu.open(button, [
      [action('Pick from the picture', 'target', () => this.host.pick((colour) => this.setPaint(paint, colour)))],
      [
        ...(at > 0 ? [action('Spray earlier', 'arrow-up', () => this.move(paint, -1))] : []),
        ...(at + 1 < layers.length ? [action('Spray later', 'arrow-down', () => this.move(paint, 1))] : []),
      ],
      layers
        .filter((layer) => layer.paint !== paint)
        .map((layer) =>
          action(`Merge into ${layer.name}`, 'git-merge', () => this.change((d) => withMerged(d, paint, layer.paint))),
        ),
      [action('Leave unpainted', 'circle-slash', () => this.change((d) => withLeftOut(d, paint)))],
    ]);
  }

  setPaint(before: string, after: string): void {
    this.change((dials) => withPaint(dials, before, after));
  }
}

class PaintRow {
  private readonly swatch = html('input', { type: 'color' });
  private readonly name = html('span', { class: 'name' });
  private readonly figures = html('span', { class: 'figures' });
  private readonly fix: HTMLButtonElement;
  private readonly more: HTMLButtonElement;
  readonly element: HTMLLIElement;
  private paint = '';

  constructor(list: PaintList) {
    this.fix = iconButton('unlock', 'Fix', () =>
      list.change((dials) => withFixed(dials, this.paint, !isFixed(dials, this.paint))),
    );
    this.more = iconButton('ellipsis', 'More', () => list.openMenu(this.more, this.paint));
    setAttributes(this.more, { 'aria-haspopup': 'menu' });
    this.swatch.addEventListener('change', () => list.setPaint(this.paint, this.swatch.value));
    this.element = html('li', { draggable: 'true' }, [
      this.swatch,
      html('span', { class: 'told' }, [this.name, this.figures]),
      this.fix,
      this.more,
    ]);
    this.element.addEventListener('keydown', (event) => {
      const by = { ArrowUp: -1, ArrowDown: 1 }[event.key];
      if (!event.altKey || by === undefined) return;
      event.preventDefault();
      list.move(this.paint, by);
    });
    this.element.addEventListener('dragstart', () => list.startDrag(this.paint));
    this.element.addEventListener('dragover', (event) => event.preventDefault());
    this.element.addEventListener('drop', (event) => {
      event.preventDefault();
      list.dropOn(this.paint);
    });
    list.rowOf.set(this.element, this);
  }

  show({ name, paint, islands, share }: ShownLayer, at: number, fixed: boolean): void {
    this.paint = paint;
    if (document.activeElement !== this.swatch) this.swatch.value = paint;
    const place = `${at + 1}: ${name}`;
    setAttributes(this.swatch, { 'aria-label': `Paint of ${name}, ${paint}`, title: `${paint}: choose another paint` });
    setText(this.name, name);
    const percent = share < 0.01 ? '<1 %' : `${Math.round(100 * share)} %`;
    setText(this.figures, islands === 0 ? percent : `${percent}, ${islands} ${islands === 1 ? 'island' : 'islands'}`);
    setAttributes(this.element, { 'aria-label': place, title: 'Drag to spray it earlier or later (Alt+Up, Alt+Down)' });
    const fixing = fixed ? `Let ${name} change with the picture` : `Keep ${name} as it is`;
    setAttributes(this.fix, { 'aria-label': `Keep ${name}`, 'aria-pressed': String(fixed), title: fixing });
    setAttributes(this.more, { 'aria-label': `More for ${name}`, title: `Pick, merge, move, leave out ${name}` });
    const icon = this.fix.firstElementChild;
    if (icon) setAttributes(icon, { class: `codicon codicon-${fixed ? 'lock' : 'unlock'}` });
  }
}
