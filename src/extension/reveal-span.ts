import * as vscode from 'vscode';
import type { Span } from '../text/text';

/** Selects a stretch of a document's text in the editor that shows it, or in the first column, and moves there. */
export async function revealSpan(uri: vscode.Uri, { from, to }: Span): Promise<void> {
  const document = await vscode.workspace.openTextDocument(uri);
  const selection = new vscode.Range(document.positionAt(from), document.positionAt(to));
  const viewColumn = columnOf(uri) ?? vscode.ViewColumn.One;
  const editor = await vscode.window.showTextDocument(document, { viewColumn, selection });
  editor.revealRange(selection, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** The column of a tab with the document's text, shown or not. */
function columnOf(uri: vscode.Uri): vscode.ViewColumn | undefined {
  const address = uri.toString();
  return vscode.window.tabGroups.all.find(({ tabs }) =>
    tabs.some(({ input }) => input instanceof vscode.TabInputText && input.uri.toString() === address),
  )?.viewColumn;
}
