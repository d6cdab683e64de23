/** All panels in which pictures become sheets, one for each picture. */
import * as vscode from 'vscode';
import { activeResource } from '../svg-documents';
import { SeparatingPanel } from './separating-panel';

const SEPARATING = 'tombolo.separating';

export class Separating implements vscode.Disposable {
  private readonly panels = new Map<string, SeparatingPanel>();
  private readonly extensionUri: vscode.Uri;
  private readonly log: vscode.LogOutputChannel;
  private readonly registered: readonly vscode.Disposable[];

  constructor(extensionUri: vscode.Uri, log: vscode.LogOutputChannel) {
    this.extensionUri = extensionUri;
    this.log = log;
    this.registered = [
      vscode.commands.registerCommand('tombolo.separate', (given?: unknown) => {
        // Menus hand over the file they were opened on; the palette means the active one.
        const picture = given instanceof vscode.Uri ? given : activeResource();
        if (picture) this.open(picture);
      }),
      vscode.window.registerWebviewPanelSerializer(SEPARATING, {
        deserializeWebviewPanel: async (panel, state: unknown) => {
          const { uri } = (state ?? {}) as { uri?: unknown };
          if (typeof uri === 'string') this.adopt(panel, vscode.Uri.parse(uri));
          else panel.dispose();
        },
      }),
    ];
  }

  open(picture: vscode.Uri): void {
    const open = this.panels.get(picture.toString());
    if (open) return open.panel.reveal();
    const panel = vscode.window.createWebviewPanel(SEPARATING, '', vscode.ViewColumn.Active, {
      retainContextWhenHidden: true,
    });
    this.adopt(panel, picture);
  }

  private adopt(panel: vscode.WebviewPanel, picture: vscode.Uri): void {
    const key = picture.toString();
    this.panels.set(key, new SeparatingPanel(panel, picture, { extensionUri: this.extensionUri, log: this.log }));
    panel.onDidDispose(() => this.panels.delete(key));
  }

  dispose(): void {
    for (const each of this.registered) each.dispose();
    for (const { panel } of [...this.panels.values()]) panel.dispose();
  }
}
