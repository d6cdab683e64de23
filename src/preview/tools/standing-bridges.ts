/** The bridges that stand in the layers that show, and which of them is under the pointer. */

import type { Matrix, Point } from '../../geometry/base/curve-types';
import type { PreviewStack } from '../../protocol/index';
import type { StandingBridgeData } from '../../protocol/standing-bridges';
import { distanceTo } from '../canvas/bridge-handles';
import type { ToolContext } from './tool-context';

/** Pixels: how near to a bridge is near enough, however thin it is drawn. */
const REACH = 8;

export class StandingBridgeList {
  private known: readonly StandingBridgeData[] = [];
  /** Stands for the texts that they were found in. */
  private texts: string | undefined;
  private asking: Promise<void> | undefined;

  private readonly context: ToolContext;

  constructor(context: ToolContext) {
    this.context = context;
  }

  /** Asks once for each stack, and only when somebody points at it: typing shall not pay for it. */
  async load(): Promise<void> {
    const { stack } = this.context;
    const texts = stack && textsOf(stack);
    if (!stack || texts === this.texts) return this.asking;
    [this.texts, this.known] = [texts, []];
    this.asking = this.context.host.standingBridges().then((answer) => {
      if (this.texts !== texts) return;
      // An answer about another text is of no use: it is asked for again.
      if (answer?.version === stack.version) this.known = answer.bridges;
      else this.texts = undefined;
    });
    return this.asking;
  }

  /** Those of the layers that show, layer by layer from the top. */
  get shown(): readonly { readonly bridge: StandingBridgeData; readonly place: Matrix }[] {
    return (this.loaded ? this.known : [])
      .flatMap((bridge) => {
        const place = this.context.placeOf(bridge.layer);
        return place ? [{ bridge, place }] : [];
      })
      .reverse();
  }

  /** Row by row, layer by layer. */
  get inOrder(): readonly StandingBridgeData[] {
    return this.shown.map(({ bridge }) => bridge).reverse();
  }

  /** Whether those of the text that is shown are known. */
  get loaded(): boolean {
    const { stack } = this.context;
    return stack !== undefined && textsOf(stack) === this.texts;
  }

  /** @param at in the window */
  near(at: Point): StandingBridgeData | undefined {
    let [best, bestDistance]: [StandingBridgeData | undefined, number] = [undefined, REACH];
    for (const { bridge, place } of this.shown) {
      const away = distanceTo(bridge, at, place, this.context.viewport);
      if (away < bestDistance || (best === undefined && away <= bestDistance)) [best, bestDistance] = [bridge, away];
    }
    return best;
  }

  /** The next one, row by row and layer by layer, beginning anew after the last. */
  after(bridge: StandingBridgeData | undefined, step: 1 | -1): StandingBridgeData | undefined {
    const all = this.inOrder;
    const at = all.findIndex(({ id }) => id === bridge?.id);
    return all.at(at < 0 && step < 0 ? -1 : (at + step) % Math.max(1, all.length));
  }

  /** The one of a layer that stands at a place of its sheet, mm. */
  standingAt(layer: string, { x, y }: Point, within: number): StandingBridgeData | undefined {
    return this.known.find(
      ({ layer: its, centre }) => its === layer && Math.hypot(centre.x - x, centre.y - y) < within,
    );
  }
}

function textsOf({ documents }: PreviewStack): string {
  return documents.map(({ uri, version }) => `${version} ${uri}`).join(' ');
}
