import * as vscode from 'vscode';
import type { BridgeOffer } from '../protocol/index';
import { applyVersionedEdits } from './apply-edits';

/** The bridges that a page was offered last. What goes into the text comes from here, not from the page. */
export class BridgeOffers {
  private last: BridgeOffer | undefined;

  /** Takes the answer to a question of the page, if it is an offer or a refusal. */
  note(kind: string, answer: unknown): void {
    if (kind !== 'bridgeAt' && kind !== 'bridgePlan') return;
    const offer = answer as BridgeOffer | { readonly refusal: string } | undefined;
    this.last = offer && 'edits' in offer ? offer : undefined;
  }

  /** @returns false, with nothing changed, where there is no offer or its text has changed since */
  async putIn(): Promise<boolean> {
    const offer = this.last;
    this.last = undefined;
    if (!offer) return false;
    return applyVersionedEdits(await vscode.workspace.openTextDocument(vscode.Uri.parse(offer.uri)), offer);
  }
}
