/** The page of a check, which its code in the Problems list leads to: shown as it is to be read, beside the drawing. */
import * as vscode from 'vscode';
import type { Bench } from './bench';

const MARKDOWN_PREVIEW = 'vscode.markdown.preview.editor';

/** The editor opens the source over the drawing; that tab is taken away again, and the page is shown instead. */
export function showPagesBeside(extensionUri: vscode.Uri, bench: Bench): vscode.Disposable {
  const folder = `${vscode.Uri.joinPath(extensionUri, 'dist/checks').path}/`;
  return vscode.window.tabGroups.onDidChangeTabs(async ({ opened }) => {
    for (const tab of opened) {
      const { input } = tab;
      if (!(input instanceof vscode.TabInputText) || !input.uri.path.startsWith(folder)) continue;
      await vscode.window.tabGroups.close(tab);
      const viewColumn = bench.column ?? vscode.ViewColumn.Beside;
      await vscode.commands.executeCommand('vscode.openWith', input.uri, MARKDOWN_PREVIEW, { viewColumn });
    }
  });
}
