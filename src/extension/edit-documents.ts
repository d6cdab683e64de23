/** What goes into the text of documents: edits for a version, another painting order. */
import * as vscode from 'vscode';
import type { VersionedEdits } from '../protocol/index';
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
 * Applies edits of a file that need not be open in the editor: then the server knows no version of it, and its text is the
 * one on disk.
 * @returns the document that was changed
 */
export async function applyToFile({
  uri,
  ...made
}: VersionedEdits & { readonly uri: string }): Promise<vscode.Uri | undefined> {
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri));
  const edits = made.version === 0 ? { ...made, version: document.version } : made;
  return (await applyVersionedEdits(document, edits)) ? document.uri : undefined;
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
  return applyToFile(answer);
}
