/** All benches: panels beside the text that show the painted stack and follow the SVG that is being edited. */
import * as vscode from 'vscode';
import type { Checked } from '../protocol/index';
import { BenchPanel } from './bench-panel';
import type { KnownPrograms } from './programs/known-programs';
import type { ServerClient } from './server-client';
import { isSvg, isThere } from './svg-documents';
import { TextColumns } from './text-columns';

const BENCH = 'tombolo.bench';

/** Milliseconds. */
const REPLACED_WITHIN = 300;

export class Bench implements vscode.Disposable {
  private readonly panels = new Set<BenchPanel>();
  private readonly listeners: vscode.Disposable[];
  private readonly columns = new TextColumns();
  private readonly deletions = vscode.workspace.createFileSystemWatcher('**/*.svg', true, true, false);

  private readonly extensionUri: vscode.Uri;
  private readonly client: ServerClient;

  private readonly programs: KnownPrograms;

  constructor(extensionUri: vscode.Uri, client: ServerClient, programs: KnownPrograms) {
    this.extensionUri = extensionUri;
    this.client = client;
    this.programs = programs;

    this.listeners = [
      client.onChecked((checked) => this.checked(checked)),
      vscode.window.onDidChangeActiveTextEditor((editor) => {
        if (editor && isSvg(editor.document)) this.follow(editor.document.uri);
        else if (editor) this.followProgram(editor.document.uri);
      }),
      this.columns,
      this.deletions,
      this.deletions.onDidDelete((uri) => void this.deleted(uri)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        for (const panel of this.panels) panel.markSoon(textEditor);
      }),
      vscode.window.registerWebviewPanelSerializer(BENCH, {
        deserializeWebviewPanel: async (panel, state: unknown) => this.restore(panel, state),
      }),
    ];
  }

  /**
   * Shows the document beside the active editor: in the panel that shows it, else in one that is not pinned, else in a
   * new one. May take the focus.
   */
  async open(uri: vscode.Uri): Promise<void> {
    const panels = [...this.panels];
    const open = panels.find((panel) => panel.isShowing(uri.toString())) ?? panels.find(({ pinned }) => !pinned);
    if (!open) return this.openAnother(uri);
    open.panel.reveal(undefined, true);
    await open.show(uri);
  }

  /** Shows a drawing beside the program that draws it, which keeps the focus. */
  async openBeside(program: vscode.Uri, drawing: vscode.Uri): Promise<void> {
    await this.open(drawing);
    const document = await vscode.workspace.openTextDocument(program);
    await vscode.window.showTextDocument(document, { viewColumn: this.columns.of(program) ?? vscode.ViewColumn.One });
  }

  /** Shows the document in a panel of its own, with those that are open. */
  async openAnother(uri: vscode.Uri): Promise<void> {
    const [first] = this.panels;
    const column = first?.panel.viewColumn ?? vscode.ViewColumn.Beside;
    const panel = this.adopt(
      vscode.window.createWebviewPanel(BENCH, vscode.l10n.t('Stencil Preview (Bench)'), column),
      false,
    );
    await panel.loaded();
    if (!first) await lockOwnGroup();
    await panel.show(uri);
  }

  /** Where the bench is, if anywhere. */
  get column(): vscode.ViewColumn | undefined {
    return [...this.panels].find(({ panel }) => panel.visible)?.panel.viewColumn;
  }

  /** What the bench shows, while it has the focus. */
  get focused(): vscode.Uri | undefined {
    return [...this.panels].find(({ panel }) => panel.active)?.uri;
  }

  private follow(uri: vscode.Uri): void {
    for (const panel of this.panels) if (!panel.pinned && !panel.isShowing(uri.toString())) void panel.show(uri);
  }

  private followProgram(program: vscode.Uri): void {
    const drawings = this.programs.drawingsOf(program);
    const [first] = drawings;
    for (const panel of this.panels) {
      const isShown = drawings.some((drawing) => panel.isShowing(drawing.toString()));
      if (first && !panel.pinned && !isShown) void panel.show(first);
    }
  }

  private async restore(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
    const { uri: address, pinned } = (state ?? {}) as { uri?: unknown; pinned?: unknown };
    const restored = this.adopt(panel, pinned === true);
    if (typeof address !== 'string') return;
    const uri = vscode.Uri.parse(address);
    // The server knows only open documents.
    await vscode.workspace.openTextDocument(uri).then(
      () => restored.show(uri),
      () => undefined,
    );
  }

  private adopt(panel: vscode.WebviewPanel, pinned: boolean): BenchPanel {
    const adopted = new BenchPanel(panel, {
      extensionUri: this.extensionUri,
      client: this.client,
      columns: this.columns,
      programs: this.programs,
      pinned,
    });
    this.panels.add(adopted);
    panel.onDidDispose(() => this.panels.delete(adopted));
    return adopted;
  }

  private async deleted(uri: vscode.Uri): Promise<void> {
    // Some programs save a file by putting another in its place.
    await new Promise((resolve) => setTimeout(resolve, REPLACED_WITHIN));
    if (await isThere(uri)) return;
    for (const panel of this.panels) if (panel.isShowing(uri.toString())) panel.gone();
  }

  private checked({ uri }: Checked): void {
    for (const panel of this.panels) if (panel.isShowing(uri) || panel.isDrawnFrom(uri)) void panel.refresh();
  }

  dispose(): void {
    for (const { panel } of [...this.panels]) panel.dispose();
    for (const listener of this.listeners) listener.dispose();
  }
}

/** Drawings that are opened next shall not cover the bench. A group with other editors in it is not ours to lock. */
async function lockOwnGroup(): Promise<void> {
  const { tabs } = vscode.window.tabGroups.activeTabGroup;
  const ours = tabs.every(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.includes(BENCH));
  if (ours) await vscode.commands.executeCommand('workbench.action.lockEditorGroup');
}
