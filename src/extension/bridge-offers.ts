/** The bridges that a page of the bench was offered last. What goes into the text comes from here, not from the page. */
import type * as vscode from 'vscode';
import type { BridgeOffer, BridgeRefusal } from '../protocol/index';
import type { LayerPlan } from '../protocol/layer-plan';
import type { BenchRequest } from '../protocol/requests';
import { applyToFile } from './edit-documents';

type Kind = BenchRequest['kind'];
type Answer = BridgeOffer | BridgeRefusal;

/** The questions that are answered by an offer, and those with which an earlier offer is given up. */
const OFFERING: ReadonlySet<Kind> = new Set<Kind>(['bridgeAt', 'bridgePlan', 'changeBridge']);
const DROPPING: ReadonlySet<Kind> = new Set<Kind>(['layerSketch', 'dropLayerPlan']);

export class BridgeOffers {
  private last: BridgeOffer | undefined;
  /** What keeps the style of the plan that was offered. */
  private keep: LayerPlan['keep'];

  /** Takes the answer to a question of the page, if it is an offer or a refusal. */
  note(kind: Kind, answer: unknown): void {
    if (kind === 'layerPlan') {
      const plan = answer as LayerPlan | undefined;
      this.take(plan?.answer, plan?.keep);
    } else if (OFFERING.has(kind)) this.take(answer as Answer | undefined);
    else if (DROPPING.has(kind)) this.take(undefined);
  }

  private take(answer: Answer | undefined, keep?: LayerPlan['keep']): void {
    this.last = answer && ('reason' in answer ? answer.anyway : answer);
    this.keep = keep;
  }

  /**
   * @param keep whether the style of the plan is kept in `tombolo.json`, as a change of its own: who takes the bridges back
   * is not asked about another file
   * @returns the documents that were changed, the drawing first; none where its text has changed since
   */
  async putIn(keep: boolean): Promise<vscode.Uri[]> {
    const { last, keep: keeping } = this;
    this.take(undefined);
    const drawing = last && (await applyToFile(last));
    if (!drawing) return [];
    const config = keep && keeping ? await applyToFile(keeping) : undefined;
    return config ? [drawing, config] : [drawing];
  }
}
