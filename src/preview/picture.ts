/** Draws the stack from its numbers: the ground with its paint, or one sheet with what falls out of it. */
import type { Stack, StackLayer } from '../server/protocol';
import { isLayerShown, type BenchState } from './bench-state';
import { setAttributes, svg, syncChildren } from './dom';
import type { View } from './view';

/** Pixels between the lines of the hatch that marks islands. */
const HATCH = 7;

export class Picture {
  /** Everything in sheet mm. */
  readonly element = svg('g');
  readonly definitions = svg('defs');
  private readonly hatch: SVGPatternElement;
  private readonly shadow = svg('path', { class: 'shadow' });
  /** What is seen through the openings of one sheet. */
  private readonly under = svg('path', { class: 'under' });
  private readonly ground = svg('path', { 'fill-rule': 'evenodd' });
  private readonly layers = svg('g');
  /** What the text at the caret draws: a dark line over a wider light one, seen on any paint. */
  private readonly caret = ['caret-halo', 'caret'].map((name) => svg('path', { class: name, d: '' }));
  private readonly frame = svg('rect', { class: 'frame' });

  constructor() {
    this.hatch = svg('pattern', { id: 'hatch', width: HATCH, height: HATCH, patternUnits: 'userSpaceOnUse' }, [
      svg('rect', { class: 'hatch-ground', width: HATCH, height: HATCH }),
      svg('path', { class: 'hatch-line', d: `M0 0V${HATCH}` }),
    ]);
    this.definitions.append(this.hatch);
    this.element.append(this.shadow, this.under, this.ground, this.layers, this.frame, ...this.caret);
  }

  draw(stack: Stack, state: BenchState): void {
    const shown = stack.layers.filter((_, index) => isLayerShown(state, stack, index));
    const single = state.mode === 'sheet' ? shown[0] : undefined;
    const outline = rectanglePath(stack);
    setAttributes(this.shadow, { d: outline });
    setAttributes(this.under, { d: single ? outline : '' });
    setAttributes(this.ground, { d: outline + (single?.openings ?? ''), class: single ? 'card' : 'ground' });
    syncChildren(this.layers, shown, makeLayer, (group, layer) => drawLayer(group, layer, single !== undefined));
    setAttributes(this.frame, { x: 0, y: 0, width: stack.width, height: stack.height });
  }

  mark(outline: string): void {
    for (const line of this.caret) setAttributes(line, { d: outline });
  }

  place(view: View): void {
    setAttributes(this.element, { transform: `matrix(${view.scale} 0 0 ${view.scale} ${view.x} ${view.y})` });
    setAttributes(this.shadow, { transform: `translate(${2 / view.scale} ${3 / view.scale})` });
    setAttributes(this.hatch, { patternTransform: `scale(${1 / view.scale}) rotate(45)` });
  }
}

function makeLayer(): SVGGElement {
  return svg('g', {}, [svg('path', { 'fill-rule': 'evenodd' }), svg('g')]);
}

/** A layer's islands lie right over its paint, so that later layers cover them as they will on the wall. */
function drawLayer(group: SVGGElement, { paint, openings, islands }: StackLayer, cut: boolean): void {
  const [painted, fallen] = group.children;
  if (painted) setAttributes(painted, { d: cut ? '' : openings, fill: paint });
  if (fallen) syncChildren(fallen, islands, makeIsland, (path, { outline }) => setAttributes(path, { d: outline }));
}

const makeIsland = (): SVGPathElement => svg('path', { class: 'island', 'fill-rule': 'evenodd' });

function rectanglePath({ sheet: { minX, minY, maxX, maxY } }: Stack): string {
  return `M${minX} ${minY}H${maxX}V${maxY}H${minX}Z`;
}
