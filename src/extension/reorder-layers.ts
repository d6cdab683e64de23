import * as vscode from 'vscode';
import type { ReorderParams } from '../protocol/views';
import { applyVersionedEdits } from './apply-edits';
import type { ServerClient } from './server-client';

/** Gives a layer another place in the painting order, as one step of undo in the file that says the order. */
export async function requestLayerOrder(
  client: ServerClient,
  uri: vscode.Uri,
  move: Omit<ReorderParams, 'uri'>,
): Promise<void> {
  const answer = await client.reorder(uri, move);
  if (!answer) return;
  if ('refusal' in answer) {
    void vscode.window.showWarningMessage(answer.refusal);
    return;
  }
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(answer.uri));
  // A file that was not open has a version that the server does not know; its text is the one on disk.
  await applyVersionedEdits(document, answer.version === 0 ? { ...answer, version: document.version } : answer);
}
