/** Bridges put in on the picture: asked for at a gap or for a finding, shown, and then written or dropped. */

import type { FindingId } from '../../engine/index';
import type { Point } from '../../geometry/base/curve-types';
import type { BridgeOffer, BridgeRefusal } from '../../protocol/index';
import type { PickedPart } from '../../protocol/parts';
import { toWindow } from '../state/viewport';
import { BridgePreviewOverlay } from './bridge-preview';
import type { ToolContext } from './tool-context';

export class BridgeTool {
  readonly preview = new BridgePreviewOverlay({ apply: () => void this.putIn(), drop: () => this.drop() });

  private readonly context: ToolContext;
  private readonly hidePart: () => void;

  /** @param hidePart takes away the part that is shown: bridges take its place */
  constructor(context: ToolContext, hidePart: () => void) {
    this.context = context;
    this.hidePart = hidePart;
  }

  /**
   * Offers a bridge over the gap at a point.
   * @param part what lies there
   * @param point in mm of the picture
   */
  async use(part: PickedPart | undefined, point: Point): Promise<void> {
    const { context } = this;
    const place = part && context.placesAt(toWindow(context.viewport, point)).find(({ layer }) => layer === part.layer);
    if (!place) {
      const reason = 'There is no gap to bridge here: click on an opening or an island.';
      this.offer({ version: context.stack?.version ?? 0, reason });
      return;
    }
    const isLast = context.nextQuestion();
    const answer = await context.host.bridgeAt(place.layer, place.point);
    if (isLast()) this.offer(answer);
  }

  /** Offers the bridges that would mend a finding. */
  async plan(finding: FindingId): Promise<void> {
    const isLast = this.context.nextQuestion();
    const answer = await this.context.whileBusy(() => this.context.host.bridgePlan(finding));
    if (isLast()) this.offer(answer);
  }

  async putIn(): Promise<void> {
    const { context } = this;
    const done = await context.host.putIn();
    const version = context.stack?.version ?? 0;
    this.preview.show(done ? undefined : { version, reason: 'The text has changed since: choose the place again.' });
    if (done) context.say('The bridge is in the text.');
    context.redraw();
  }

  drop(): void {
    this.preview.show(undefined);
    this.context.redraw();
  }

  draw(): void {
    this.preview.draw((layer) => this.context.placeOf(layer), this.context.viewport);
  }

  private offer(answer: BridgeOffer | BridgeRefusal | undefined): void {
    this.hidePart();
    this.preview.show(answer);
    this.context.redraw();
  }
}
