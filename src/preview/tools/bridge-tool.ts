/** Bridges put in on the picture: asked for at a gap or for a finding, shown, and then written or dropped. */

import type { FindingId } from '../../engine/index';
import type { Point } from '../../geometry/base/curve-types';
import type { BridgeOffer, BridgeRefusal } from '../../protocol/index';
import type { PickedPart } from '../../protocol/parts';
import { whyNot } from '../../report/refusal';
import { toWindow } from '../state/viewport';
import type { BridgeBar } from './bridge-bar';
import { BridgePreviewOverlay } from './bridge-preview';
import type { ToolContext } from './tool-context';

export const TEXT_CHANGED = 'The text has changed since: choose the place again.';

export class BridgeTool {
  readonly preview = new BridgePreviewOverlay();

  private readonly context: ToolContext;
  private readonly bar: BridgeBar;
  private readonly hidePart: () => void;

  /** @param hidePart takes away the part that is shown: bridges take its place */
  constructor(context: ToolContext, bar: BridgeBar, hidePart: () => void) {
    this.context = context;
    this.bar = bar;
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
      const reason = 'There is no gap to bridge here: click on an opening, an island or a bridge.';
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

  /** Whether what is offered lies in a layer that shows. */
  get shows(): boolean {
    return this.preview.layers.some((layer) => this.context.placeOf(layer) !== undefined);
  }

  drop(): void {
    this.preview.show([]);
    this.bar.show(undefined);
    this.context.redraw();
  }

  draw(): void {
    this.preview.draw((layer) => this.context.placeOf(layer), this.context.viewport);
  }

  private offer(answer: BridgeOffer | BridgeRefusal | undefined): void {
    this.hidePart();
    const isRefused = answer !== undefined && 'reason' in answer;
    const offer = isRefused ? answer.anyway : answer;
    this.preview.show(offer?.bridges ?? [], offer?.cutAway);
    const add = {
      label: offer?.cutAway ? 'Cut away' : isRefused ? 'Add anyway' : isSeveral(offer) ? 'Add bridges' : 'Add bridge',
      run: () => void this.putIn(offer),
    };
    const drop = { label: offer ? 'Cancel' : 'Close', run: () => this.drop() };
    this.bar.show(answer && { sentence: sentenceOf(answer), ...(offer && { apply: add }), drop });
    this.context.redraw();
  }

  private async putIn(offer: BridgeOffer | undefined): Promise<void> {
    const { context } = this;
    const done = await context.host.putIn();
    this.preview.show([]);
    if (done) this.bar.tellDone(doneBy(offer), context.host.undo);
    else this.bar.show({ sentence: TEXT_CHANGED, drop: { label: 'Close', run: () => this.drop() } });
    context.focusPicture();
    context.redraw();
  }
}

function doneBy(offer: BridgeOffer | undefined): string {
  if (offer?.cutAway) return 'Island cut away.';
  return isSeveral(offer) ? 'Bridges added.' : 'Bridge added.';
}

function isSeveral(offer: BridgeOffer | undefined): boolean {
  return (offer?.bridges.length ?? 1) > 1;
}

/** Why it is refused and what comes first; where it can be had anyway, what it then leaves behind. */
export function sentenceOf(answer: BridgeOffer | BridgeRefusal): string {
  if (!('reason' in answer)) return answer.title;
  return answer.anyway ? `${whyNot(answer)} (${answer.anyway.title})` : whyNot(answer);
}
