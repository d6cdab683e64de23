import * as vscode from 'vscode';
import type { VersionedEdits } from '../protocol/index';

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
