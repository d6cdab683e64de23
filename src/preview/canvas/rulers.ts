/** The rulers along the upper and left edges, and the scale bar. */
import { setAttributes, setText, svg, syncChildren } from '../dom/dom';
import { millimetres, rulerTicks, scaleBarLength, type Tick } from '../dom/ruler-ticks';
import { type Size, toSheet, type Viewport } from '../state/viewport';

/** Pixels across a ruler. */
export const RULER = 22;

const lengths: Record<Tick['length'], number> = { long: 10, middle: 7, short: 4 };

export class Rulers {
  readonly element = svg('g', { class: 'rulers', 'aria-hidden': 'true' });
  private readonly top = svg('rect', { class: 'ruler' });
  private readonly left = svg('rect', { class: 'ruler' });
  private readonly topTicks = svg('path', { class: 'ticks' });
  private readonly leftTicks = svg('path', { class: 'ticks' });
  private readonly topLabels = svg('g');
  private readonly leftLabels = svg('g');
  private readonly corner = svg('rect', { class: 'ruler', width: RULER, height: RULER });
  private readonly unit = svg('text', { class: 'unit', x: RULER / 2, y: RULER / 2 });
  private readonly plate = svg('rect', { class: 'plate', height: 30, rx: 4 });
  private readonly bar = svg('path', { class: 'scale-bar' });
  private readonly barLabel = svg('text', { class: 'scale-label' });

  constructor() {
    this.unit.textContent = 'mm';
    this.element.append(
      this.plate,
      this.bar,
      this.barLabel,
      this.top,
      this.left,
      this.topTicks,
      this.leftTicks,
      this.topLabels,
      this.leftLabels,
      this.corner,
      this.unit,
    );
  }

  draw(view: Viewport, { width, height }: Size): void {
    const first = toSheet(view, { x: RULER, y: RULER });
    const last = toSheet(view, { x: width, y: height });
    setAttributes(this.top, { width, height: RULER });
    setAttributes(this.left, { width: RULER, height });
    const across = rulerTicks(first.x, last.x, view.scale);
    const down = rulerTicks(first.y, last.y, view.scale);
    const x = (at: number) => crisp(view.x + at * view.scale);
    const y = (at: number) => crisp(view.y + at * view.scale);
    setAttributes(this.topTicks, { d: across.map((tick) => `M${x(tick.at)} ${RULER}v${-tickLength(tick)}`).join('') });
    setAttributes(this.leftTicks, { d: down.map((tick) => `M${RULER} ${y(tick.at)}h${-tickLength(tick)}`).join('') });
    this.label(this.topLabels, across, (at) => ({ x: x(at) + 3, y: 9 }));
    this.label(this.leftLabels, down, (at) => ({ transform: `translate(9 ${y(at) - 3}) rotate(-90)` }));
    this.drawBar(view, { width, height });
  }

  private label(
    parent: SVGGElement,
    ticks: readonly Tick[],
    place: (at: number) => Record<string, string | number>,
  ): void {
    const labelled = ticks.filter(({ length }) => length === 'long');
    syncChildren(
      parent,
      labelled,
      () => svg('text'),
      (text, { at }) => {
        setText(text, millimetres(at));
        setAttributes(text, place(at));
      },
    );
  }

  private drawBar(view: Viewport, { width, height }: Size): void {
    const length = scaleBarLength(Math.min(width * 0.3, 160), view.scale);
    const [x, y, pixels] = [RULER + 14, height - 14, length * view.scale];
    setAttributes(this.plate, { x: x - 8, y: y - 22, width: pixels + 16 });
    setAttributes(this.bar, { d: `M${crisp(x)} ${y - 6}v6h${Math.round(pixels)}v-6` });
    setAttributes(this.barLabel, { x: x + pixels / 2, y: y - 5 });
    setText(this.barLabel, `${millimetres(length)} mm`);
  }
}

const tickLength = ({ length }: Tick): number => lengths[length];

/** Lines one pixel wide are sharp in the middle of a pixel. */
const crisp = (pixels: number): number => Math.round(pixels) + 0.5;
