/** The part that is picked: its outline on the picture, its card, and the parts that come before and after it. */

import type { Point } from '../../geometry/base/curve-types';
import type { PickedPart } from '../../protocol/parts';
import { OutlinePath } from '../canvas/outline-path';
import { setAttributes } from '../dom/dom';
import { matrixText } from '../dom/matrix-text';
import { layersOf } from '../state/scene-places';
import { viewportBox } from '../state/viewport';
import type { ToolContext } from './tool-context';
import { PartCard, spoken } from './tooltip';

export class PickTool {
  readonly card = new PartCard();
  /** In mm of the picture. */
  readonly outline = ['caret-halo', 'picked'].map((name) => new OutlinePath({ class: name }));
  private picked: PickedPart | undefined;

  private readonly context: ToolContext;

  constructor(context: ToolContext) {
    this.context = context;
  }

  get part(): PickedPart | undefined {
    return this.picked;
  }

  /** @param at in the window, for the card; without it the card is hidden */
  show(part: PickedPart | undefined, at?: Point): void {
    const layer = part && this.context.layerOf(part);
    const same =
      part !== undefined &&
      part.layer === this.picked?.layer &&
      part.outline === this.picked.outline &&
      part.kind === this.picked.kind;
    this.picked = part;
    // While the pointer stays on one part, its card stays where it is, to be read and reached.
    if (!part || !layer || !at) this.card.hide();
    else if (!same || !this.card.shown) this.card.show(part, layer, at, this.context.size);
    this.context.redraw();
  }

  forget(): void {
    this.picked = undefined;
    this.card.hide();
  }

  draw(): void {
    const { viewport, size } = this.context;
    const matrix = this.picked && this.context.placeOf(this.picked.layer);
    for (const path of this.outline) {
      setAttributes(path.element, { transform: matrix ? matrixText(matrix) : '' });
      path.set(matrix ? (this.picked?.outline ?? '') : '');
      path.show(viewportBox(viewport, size, matrix), viewport.scale);
    }
  }

  /** The next or last part; after those of one layer come those of the next. Undefined where the answer is late. */
  async turn(step: 1 | -1): Promise<PickedPart | undefined> {
    const { scene, stack, host } = this.context;
    const layers = layersOf(scene).flatMap((index) => stack?.layers[index]?.id ?? []);
    const { picked } = this;
    const layer = picked && layers.includes(picked.layer) ? picked.layer : layers.at(-1);
    if (layer === undefined) return undefined;
    const number = picked && picked.layer === layer && picked.count > 0 ? picked.number + step : 0;
    const over = picked !== undefined && picked.count > 0 && (number < 0 || number >= picked.count);
    const other = layers.at((layers.indexOf(layer) + step) % layers.length) ?? layer;
    const isLast = this.context.nextQuestion();
    const answer = await host.part(over ? other : layer, over ? (step > 0 ? 0 : -1) : number);
    return isLast() && this.context.isCurrent(answer) ? answer.part : undefined;
  }

  say(): void {
    const { picked, context } = this;
    const layer = picked && context.layerOf(picked);
    context.say(picked && layer && context.stack ? spoken(picked, layer, context.stack.sheet) : '');
  }
}
