/** The part of the bench that one looks at: picture, marks and rulers, moved and scaled by mouse and keyboard. */
import type { Stack } from '../server/protocol';
import { isFindingShown, type BenchState } from './bench-state';
import { html, setAttributes, svg } from './dom';
import { followGestures } from './gestures';
import { Marks } from './marks';
import { Picture } from './picture';
import { RULER, Rulers } from './rulers';
import { bringIntoView, centre, fit, toSheet, TRUE_SIZE, zoomAt, type Size, type View } from './view';

/** Pixels that stay free around a sheet that is shown whole. */
const PADDING = RULER + 26;

export class Surface {
  readonly element = html('div', { class: 'surface' });
  /** Undefined while the whole sheet is shown, however large the window is. */
  private chosen: View | undefined;
  private stack: Stack | undefined;
  private state: BenchState | undefined;
  private readonly canvas = svg('svg', { tabindex: 0, role: 'img', class: 'canvas' });
  private readonly picture = new Picture();
  private readonly rulers = new Rulers();
  private readonly marks: Marks;

  /**
   * @param choose is called with the index of a finding whose mark was clicked
   * @param moved is called with each new view; `chosen` is undefined where the whole sheet is shown
   */
  constructor(
    choose: (index: number) => void, private readonly moved: (view: View, chosen: View | undefined) => void,
  ) {
    this.marks = new Marks(choose);
    this.canvas.append(this.picture.definitions, this.picture.element, this.marks.element, this.rulers.element);
    this.element.append(this.canvas);
    followGestures(this.canvas, {
      view: () => this.view,
      move: (view) => this.look(view),
      fit: () => this.look(undefined),
    });
    new ResizeObserver(() => this.redraw()).observe(this.element);
  }

  get view(): View {
    return this.chosen ?? (this.stack ? fit(this.size, this.stack.sheet, PADDING) : { scale: 1, x: 0, y: 0 });
  }

  /** @param view undefined for the whole sheet */
  look(view: View | undefined): void {
    this.chosen = view;
    this.redraw();
  }

  zoom(factor: number): void {
    this.look(zoomAt(this.view, { x: this.size.width / 2, y: this.size.height / 2 }, factor));
  }

  trueSize(): void {
    const { width, height } = this.size;
    this.look(centre(this.size, toSheet(this.view, { x: width / 2, y: height / 2 }), TRUE_SIZE));
  }

  draw(stack: Stack, state: BenchState): void {
    this.stack = stack;
    this.state = state;
    this.picture.draw(stack, state);
    setAttributes(this.canvas, { 'aria-label': describe(stack) });
    this.redraw();
  }

  mark(outline: string): void {
    this.picture.mark(outline);
  }

  /** Shifts the picture only where the finding's place does not show. */
  bringIntoView(index: number): void {
    const at = this.stack?.findings[index]?.at;
    if (!at) return;
    const shifted = bringIntoView(this.view, at, this.size, PADDING);
    if (shifted.x !== this.view.x || shifted.y !== this.view.y) this.look(shifted);
  }

  private get size(): Size {
    return { width: this.element.clientWidth, height: this.element.clientHeight };
  }

  private redraw(): void {
    const { stack, state, view, size } = this;
    if (!stack || !state || size.width === 0 || size.height === 0) return;
    this.picture.place(view);
    this.rulers.draw(view, size);
    this.marks.draw(stack.findings.flatMap((finding, index) => (
      isFindingShown(state, stack, finding) ? [{ finding, index, selected: index === state.selected }] : []
    )), view);
    this.moved(view, this.chosen);
  }
}

function describe({ width, height, layers, findings }: Stack): string {
  const size = `${Math.round(width * 10) / 10} by ${Math.round(height * 10) / 10} mm`;
  return `Stencil, ${size}, layers: ${layers.length}, findings: ${findings.length}. `
    + 'Arrow keys move it, plus and minus scale it, zero shows all of it.';
}
