/** Tells the menus whether what is in front is a stencil: text, or the picture that the editor opens SVG files in. */
import * as vscode from 'vscode';
import type { ServerClient } from './server-client';
import { activeResource, mayBeStencil, mayBeStencilFile } from './svg-documents';

const KEY = 'tombolo.isStencil';

export class StencilContext implements vscode.Disposable {
  /** What the server said last. */
  private readonly known = new Map<string, boolean>();
  private readonly listeners: vscode.Disposable[];
  private asked = 0;

  constructor(client: ServerClient) {
    const look = () => void this.look();
    this.listeners = [
      client.onChecked(({ uri, stencil }) => {
        this.known.set(uri, stencil);
        look();
      }),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => this.known.delete(uri.toString())),
      vscode.window.onDidChangeActiveTextEditor(look),
      vscode.window.tabGroups.onDidChangeTabs(look),
      vscode.window.tabGroups.onDidChangeTabGroups(look),
    ];
    look();
  }

  private async look(): Promise<void> {
    this.asked += 1;
    const turn = this.asked;
    const uri = activeResource();
    const isStencil = uri?.path.endsWith('.svg') ? await this.isStencil(uri) : false;
    if (turn === this.asked) await vscode.commands.executeCommand('setContext', KEY, isStencil);
  }

  private async isStencil(uri: vscode.Uri): Promise<boolean> {
    const open = vscode.workspace.textDocuments.find((document) => document.uri.toString() === uri.toString());
    if (open) return this.known.get(uri.toString()) ?? mayBeStencil(open);
    return mayBeStencilFile(uri);
  }

  dispose(): void {
    for (const listener of this.listeners) listener.dispose();
  }
}
