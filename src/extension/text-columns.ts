/** Where each document's text was worked on last: of several editors on one document, that one is meant. */
import * as vscode from 'vscode';

export class TextColumns implements vscode.Disposable {
  private readonly last = new Map<string, vscode.ViewColumn>();
  private readonly listener = vscode.window.onDidChangeActiveTextEditor((editor) => this.note(editor));

  constructor() {
    this.note(vscode.window.activeTextEditor);
  }

  private note(editor: vscode.TextEditor | undefined): void {
    if (editor?.viewColumn !== undefined) this.last.set(editor.document.uri.toString(), editor.viewColumn);
  }

  /** @returns the column of a tab with the document's text, shown or not; undefined where there is none */
  of(uri: vscode.Uri): vscode.ViewColumn | undefined {
    const address = uri.toString();
    const columns = vscode.window.tabGroups.all
      .filter(({ tabs }) =>
        tabs.some(({ input }) => input instanceof vscode.TabInputText && input.uri.toString() === address),
      )
      .map(({ viewColumn }) => viewColumn);
    const last = this.last.get(address);
    return columns.find((column) => column === last) ?? columns[0];
  }

  dispose(): void {
    this.listener.dispose();
  }
}
