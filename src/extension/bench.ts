/** The bench: a panel beside the text that shows the painted stack and follows the SVG that is being edited. */
import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';
import type { FromBench, ToBench } from '../preview/messages';
import type { Checked } from '../server/protocol';
import { benchHtml } from './bench-html';
import { revealSpan } from './reveal-span';
import type { ServerClient } from './server-client';
import { isSvg } from './svg-documents';

export const BENCH = 'tombolo.bench';

/** Milliseconds that the caret rests before the picture is marked. */
const MARK_AFTER = 80;

export class Bench implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  /** The document that is shown. */
  private uri: vscode.Uri | undefined;
  private asked = 0;
  private marking: NodeJS.Timeout | undefined;
  private readonly listeners: vscode.Disposable[];

  constructor(private readonly extensionUri: vscode.Uri, private readonly client: ServerClient) {
    this.listeners = [
      client.onChecked((checked) => this.checked(checked)),
      vscode.window.onDidChangeActiveTextEditor((editor) => {
        if (editor && isSvg(editor.document)) this.follow(editor.document.uri);
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.markSoon(textEditor)),
      vscode.window.registerWebviewPanelSerializer(BENCH, {
        deserializeWebviewPanel: async (panel, state: unknown) => this.restore(panel, state),
      }),
    ];
  }

  /** Opens the panel beside the active editor, or turns the open one to this document. May take the focus. */
  async open(uri: vscode.Uri): Promise<void> {
    if (this.panel) {
      this.panel.reveal(undefined, true);
    } else {
      const panel = vscode.window.createWebviewPanel(BENCH, 'Bench', vscode.ViewColumn.Beside, this.options());
      const loaded = loadOf(panel);
      this.adopt(panel);
      await loaded;
      await lockOwnGroup();
    }
    await this.show(uri);
  }

  /** What the bench shows, while it has the focus. */
  get focused(): vscode.Uri | undefined {
    return this.panel?.active ? this.uri : undefined;
  }

  private follow(uri: vscode.Uri): void {
    if (this.panel && uri.toString() !== this.uri?.toString()) void this.show(uri);
  }

  private options(): vscode.WebviewOptions {
    return { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(this.extensionUri, 'dist')] };
  }

  private async restore(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
    const address = (state as { uri?: unknown } | undefined)?.uri;
    panel.webview.options = this.options();
    this.adopt(panel);
    if (typeof address !== 'string') return;
    const uri = vscode.Uri.parse(address);
    // The server knows only open documents.
    await vscode.workspace.openTextDocument(uri).then(() => this.show(uri), () => undefined);
  }

  private adopt(panel: vscode.WebviewPanel): void {
    this.panel?.dispose();
    this.panel = panel;
    panel.iconPath = vscode.Uri.joinPath(this.extensionUri, 'media/icon.png');
    panel.webview.onDidReceiveMessage((message: FromBench) => void this.hear(message));
    panel.onDidDispose(() => {
      if (this.panel === panel) this.panel = undefined;
    });
    panel.webview.html = benchHtml(panel.webview, this.extensionUri, randomBytes(16).toString('base64'));
  }

  private async show(uri: vscode.Uri): Promise<void> {
    if (uri.toString() !== this.uri?.toString()) this.post({ type: 'mark', outline: '' });
    this.uri = uri;
    if (this.panel) this.panel.title = `Bench: ${uri.path.split('/').at(-1) ?? ''}`;
    await this.refresh();
  }

  private checked({ uri }: Checked): void {
    if (this.panel && uri === this.uri?.toString()) void this.refresh();
  }

  private async refresh(): Promise<void> {
    const uri = this.uri;
    if (!uri) return;
    const turn = ++this.asked;
    const stack = await this.client.stack(uri);
    // Only the answer to the last question is shown.
    if (turn !== this.asked || !stack) return;
    this.post({ type: 'stack', stack });
    // An edit from elsewhere moves the shape under a caret that stays where it is.
    const editor = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
    if (editor) this.markSoon(editor);
  }

  private markSoon({ document, selection }: vscode.TextEditor): void {
    if (!this.panel || document.uri.toString() !== this.uri?.toString()) return;
    clearTimeout(this.marking);
    this.marking = setTimeout(() => void this.mark(document, selection.active), MARK_AFTER);
  }

  private async mark(document: vscode.TextDocument, place: vscode.Position): Promise<void> {
    const { uri, version } = document;
    const shape = await this.client.shapeAt(uri, document.offsetAt(place));
    const editor = vscode.window.activeTextEditor;
    // An answer about another text or place is late: the next one is under way.
    const late = editor?.document.uri.toString() === uri.toString()
      && (editor.document.version !== version || !editor.selection.active.isEqual(place));
    if (!late && uri.toString() === this.uri?.toString()) this.post({ type: 'mark', outline: shape?.outline ?? '' });
  }

  private post(message: ToBench): void {
    void this.panel?.webview.postMessage(message);
  }

  private async hear(message: FromBench): Promise<void> {
    if (message.type === 'ready') return this.refresh();
    const uri = this.uri;
    if (!uri || message.uri !== uri.toString()) return;
    if (message.type === 'begin') await vscode.commands.executeCommand('tombolo.begin', uri);
    else await revealSpan(uri, message);
  }

  dispose(): void {
    clearTimeout(this.marking);
    this.panel?.dispose();
    for (const listener of this.listeners) listener.dispose();
  }
}

/** A page takes the focus when it has loaded; what gives the focus back must wait for that. */
function loadOf(panel: vscode.WebviewPanel): Promise<void> {
  return new Promise((resolve) => {
    panel.webview.onDidReceiveMessage((message: FromBench) => message.type === 'ready' && resolve());
    panel.onDidDispose(() => resolve());
  });
}

/** Drawings that are opened next shall not cover the bench. A group with other editors in it is not ours to lock. */
async function lockOwnGroup(): Promise<void> {
  const { tabs } = vscode.window.tabGroups.activeTabGroup;
  const ours = tabs.every(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.includes(BENCH));
  if (ours) await vscode.commands.executeCommand('workbench.action.lockEditorGroup');
}
