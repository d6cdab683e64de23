/** What goes into the text of documents: edits for a version, another painting order, bridges that were offered. */
import * as vscode from 'vscode';
import type { BridgeOffer, BridgeRefusal, VersionedEdits } from '../protocol/index';
import type { BenchRequest } from '../protocol/requests';
import type { Reordering } from '../protocol/views';
import { noticeText } from '../text/notice';

/**
 * Applies edits as one step of undo.
 * @returns false, with nothing changed, where the document has moved on since the edits were made
 */
export async function applyVersionedEdits(
  document: vscode.TextDocument,
  { version, edits }: VersionedEdits,
): Promise<boolean> {
  if (document.version !== version) return false;
  const change = new vscode.WorkspaceEdit();
  for (const { span, text } of edits) {
    change.replace(document.uri, new vscode.Range(document.positionAt(span.from), document.positionAt(span.to)), text);
  }
  return vscode.workspace.applyEdit(change);
}

/**
 * Puts layers into another order, as one step of undo in the file that says the order. Says why where that cannot be.
 * @returns the document that was changed
 */
export async function applyReordering(answer: Reordering | undefined): Promise<vscode.Uri | undefined> {
  if (!answer) return undefined;
  if ('refusal' in answer) {
    void vscode.window.showWarningMessage(noticeText(answer.refusal));
    return undefined;
  }
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(answer.uri));
  // A file that was not open has a version that the server does not know; its text is the one on disk.
  const edits = answer.version === 0 ? { ...answer, version: document.version } : answer;
  return (await applyVersionedEdits(document, edits)) ? document.uri : undefined;
}

/** The questions that are answered by an offer. */
const OFFERING: ReadonlySet<string> = new Set<BenchRequest['kind']>(['bridgeAt', 'bridgePlan', 'changeBridge']);

/** The bridges that a page was offered last. What goes into the text comes from here, not from the page. */
export class BridgeOffers {
  private last: BridgeOffer | undefined;

  /** Takes the answer to a question of the page, if it is an offer or a refusal. */
  note(kind: string, answer: unknown): void {
    if (!OFFERING.has(kind)) return;
    const offer = answer as BridgeOffer | BridgeRefusal | undefined;
    this.last = offer && ('reason' in offer ? offer.anyway : offer);
  }

  /** @returns the document that was changed; undefined, with nothing changed, where its text has changed since */
  async putIn(): Promise<vscode.Uri | undefined> {
    const offer = this.last;
    this.last = undefined;
    if (!offer) return undefined;
    const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(offer.uri));
    return (await applyVersionedEdits(document, offer)) ? document.uri : undefined;
  }
}
