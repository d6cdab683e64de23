/** One bench: a panel that shows the stack of a document, and follows the active one unless it is pinned. */
import * as vscode from 'vscode';
import { CONFIG_NAME } from '../config/types';
import { isFromBench } from '../protocol/bench-guard';
import type { MarkedShape } from '../protocol/index';
import { KEEP_BRIDGES } from '../protocol/programs';
import type { BenchRequest } from '../protocol/requests';
import type { FromBench, ToBench } from '../protocol/webview';
import { oneLine } from '../text/plain-text';
import type { Span } from '../text/text';
import { applyBestOrder } from './best-order';
import { BridgeOffers } from './bridge-offers';
import { writeCutFiles, writeJob } from './cutting/write-cut';
import { applyReordering } from './edit-documents';
import { ownPage } from './own-page';
import type { KnownPrograms } from './programs/known-programs';
import { savePicture } from './save-picture';
import { keepScreen, onScreenChanged, screenPixelsPerInch } from './screen';
import type { ServerClient } from './server-client';
import type { TextColumns } from './text-columns';

/** Milliseconds that the caret rests before the picture is marked. */
const MARK_AFTER = 80;

export interface PanelOptions {
  readonly extensionUri: vscode.Uri;
  readonly client: ServerClient;
  readonly columns: TextColumns;
  readonly programs: KnownPrograms;
  readonly pinned: boolean;
}

export class BenchPanel {
  /** The document that is shown. */
  uri: vscode.Uri | undefined;
  pinned: boolean;
  private asked = 0;
  private marking: ReturnType<typeof setTimeout> | undefined;
  private drawn: ((bytes: Uint8Array | undefined) => void) | undefined;
  private readonly client: ServerClient;
  private readonly columns: TextColumns;
  private readonly programs: KnownPrograms;
  private readonly offers = new BridgeOffers();
  /** The documents that were last changed from here; what is taken back is the change of the first. */
  private changed: readonly vscode.Uri[] = [];
  /** The documents that the stack shows. */
  private documents: ReadonlySet<string> = new Set();

  readonly panel: vscode.WebviewPanel;

  constructor(panel: vscode.WebviewPanel, { extensionUri, client, columns, programs, pinned }: PanelOptions) {
    this.panel = panel;

    this.client = client;
    this.columns = columns;
    this.programs = programs;
    this.pinned = pinned;
    panel.webview.options = {
      enableScripts: true,
      localResourceRoots: [vscode.Uri.joinPath(extensionUri, 'dist')],
    };
    panel.iconPath = vscode.Uri.joinPath(extensionUri, 'media/icon.png');
    panel.webview.onDidReceiveMessage((message: unknown) => {
      if (isFromBench(message)) void this.hear(message);
      else client.log.warn(`A message of the bench was not taken: ${kindOf(message)}`);
    });
    const screen = onScreenChanged(() => this.postScreen());
    panel.onDidDispose(() => {
      screen.dispose();
      clearTimeout(this.marking);
      this.drawn?.(undefined);
    });
    panel.webview.html = ownPage(panel.webview, extensionUri, {
      name: 'preview',
      title: 'Stencil Preview',
      // Our own pictures become PNG by way of a data address, and are painted by a worker of its own text.
      allows: 'img-src data:; worker-src blob:',
    });
  }

  isShowing(uri: string): boolean {
    return this.uri?.toString() === uri;
  }

  /** Whether a document has a layer or a finding in the stack that is shown. */
  isDrawnFrom(uri: string): boolean {
    return this.documents.has(uri);
  }

  /** A page takes the focus when it has loaded; what gives the focus back must wait for that. */
  loaded(): Promise<void> {
    return new Promise((resolve) => {
      this.panel.webview.onDidReceiveMessage((message: FromBench) => message.type === 'ready' && resolve());
      this.panel.onDidDispose(() => resolve());
    });
  }

  async show(uri: vscode.Uri): Promise<void> {
    if (!this.isShowing(uri.toString())) this.post({ type: 'mark', outline: '', layers: [] });
    this.uri = uri;
    this.panel.title = vscode.l10n.t('Stencil Preview (Bench): {0}', uri.path.split('/').at(-1) ?? '');
    await this.refresh();
  }

  async refresh(): Promise<void> {
    const { uri } = this;
    if (!uri) return;
    this.asked += 1;
    const turn = this.asked;
    const stack = await this.client.stack(uri);
    // Only the answer to the last question is shown.
    if (turn !== this.asked || !stack) return;
    this.documents = new Set([stack.uri, ...stack.documents.map((document) => document.uri)]);
    this.post({ type: 'stack', stack });
    // An edit from elsewhere moves the shape under a caret that stays where it is.
    const { activeTextEditor, visibleTextEditors } = vscode.window;
    const editors = [...(activeTextEditor ? [activeTextEditor] : []), ...visibleTextEditors];
    const editor = editors.find(({ document }) => this.isAbout(document.uri));
    if (editor) this.markSoon(editor);
  }

  /** The file that is shown was deleted: what is shown is how it was. */
  gone(): void {
    this.post({ type: 'gone', name: this.uri?.path.split('/').at(-1) ?? '' });
  }

  markSoon({ document, selection }: vscode.TextEditor): void {
    if (!this.isAbout(document.uri)) return;
    clearTimeout(this.marking);
    this.marking = setTimeout(() => void this.mark(document, selection.active), MARK_AFTER);
  }

  /** Whether a text is the drawing that is shown, or its program. */
  private isAbout(text: vscode.Uri): boolean {
    return this.isShowing(text.toString()) || this.drawnHere(text).length > 0;
  }

  /** Those of a program's drawings that the stack shows. */
  private drawnHere(program: vscode.Uri): vscode.Uri[] {
    return this.programs.drawingsOf(program).filter((drawing) => this.isDrawnFrom(drawing.toString()));
  }

  private async mark(document: vscode.TextDocument, place: vscode.Position): Promise<void> {
    const { uri, version } = document;
    const shape = this.isShowing(uri.toString())
      ? await this.client.shapeAt(uri, document.offsetAt(place))
      : await this.drawnAtLine(uri, place.line);
    const editor = vscode.window.activeTextEditor;
    // An answer about another text or place is late: the next one is under way.
    const late =
      editor?.document.uri.toString() === uri.toString() &&
      (editor.document.version !== version || !editor.selection.active.isEqual(place));
    if (!late && this.isAbout(uri))
      this.post({ type: 'mark', outline: shape?.outline ?? '', layers: shape?.layers ?? [] });
  }

  /** What a line of a program draws, in all that is shown. */
  private async drawnAtLine(program: vscode.Uri, line: number): Promise<Pick<MarkedShape, 'outline' | 'layers'>> {
    const asked = this.drawnHere(program).map((drawing) => this.client.drawnAt(drawing, program, line));
    const drawn = (await Promise.all(asked)).flatMap((each) => each ?? []);
    return {
      outline: drawn.map(({ outline }) => outline).join(''),
      layers: drawn.flatMap(({ layerIds }) => layerIds),
    };
  }

  private post(message: ToBench): void {
    void this.panel.webview.postMessage(message);
  }

  private async hear(message: FromBench): Promise<void> {
    const { uri } = this;
    if (message.type === 'ready') {
      this.postScreen();
      return this.refresh();
    }
    if (message.type === 'screen') return keepScreen(message.pixelsPerInch);
    if (message.type === 'pin') this.pinned = message.pinned;
    else if (message.type === 'picture') this.drawn?.(message.bytes);
    else if (!uri) return;
    else if (message.type === 'undo' || message.type === 'redo') await this.takeBack(message.type, uri);
    else if (message.type === 'save') await this.save(uri);
    else if (message.type === 'saveAs') await savePicture(uri, (format) => this.draw(format));
    else if (message.type === 'writeCut') await writeCutFiles(uri, this.client);
    else if (message.type === 'writeJob') await writeJob(uri, this.client);
    else if (message.type === 'ask') {
      this.post({ type: 'answer', id: message.id, answer: await this.answer(uri, message.question) });
    } else if (message.type === 'reorder') this.noteOne(await applyReordering(await this.client.reorder(uri, message)));
    else if (message.type === 'bestOrder') this.noteOne(await applyBestOrder(this.client, uri, message.version));
    else if (!this.isDrawnFrom(message.uri)) return;
    else if (message.type === 'begin') await vscode.commands.executeCommand('tombolo.begin', uri);
    else await this.reveal(vscode.Uri.parse(message.uri), message);
  }

  /** What was changed from here is what is taken back from here. */
  private note(changed: readonly vscode.Uri[]): void {
    if (changed.length > 0) this.changed = changed;
  }

  private noteOne(changed: vscode.Uri | undefined): void {
    this.note(changed ? [changed] : []);
  }

  private async answer(uri: vscode.Uri, question: BenchRequest): Promise<unknown> {
    if (question.kind === 'putIn') {
      const wish = this.programs.isDrawing(uri) ? await askAboutDrawn(uri) : 'add';
      if (wish !== 'add') return wish === 'kept';
      const changed = await this.offers.putIn(question.keep === true);
      this.note(changed);
      return changed.length > 0;
    }
    const answer = await this.client.answer(uri, question);
    this.offers.note(question.kind, answer);
    return answer;
  }

  /** What is shown, and what was changed from here. */
  private async save(shown: vscode.Uri): Promise<void> {
    const ours = new Set([...this.documents, ...[shown, ...this.changed].map(String)]);
    for (const document of vscode.workspace.textDocuments)
      if (document.isDirty && ours.has(document.uri.toString())) await document.save();
  }

  /** The editor takes back only where its focus is: so it goes to the text for a moment. */
  private async takeBack(command: 'undo' | 'redo', shown: vscode.Uri): Promise<void> {
    const [changed] = this.changed;
    const isShown = changed && (this.isDrawnFrom(changed.toString()) || isConfigOf(changed, shown));
    const uri = isShown ? changed : shown;
    const document = await vscode.workspace.openTextDocument(uri);
    await vscode.window.showTextDocument(document, { viewColumn: this.columns.of(uri) ?? vscode.ViewColumn.One });
    await vscode.commands.executeCommand(command);
    this.panel.reveal(this.panel.viewColumn, false);
    this.post({ type: 'focus' });
  }

  private postScreen(): void {
    this.post({ type: 'screen', pixelsPerInch: screenPixelsPerInch() });
  }

  /** Selects a stretch of a document's text in the editor that was used last for it, and moves there. */
  private async reveal(uri: vscode.Uri, span: Span): Promise<void> {
    if (await this.revealProgram(uri, span)) return;
    const { from, to } = span;
    const document = await vscode.workspace.openTextDocument(uri);
    const selection = new vscode.Range(document.positionAt(from), document.positionAt(to));
    const viewColumn = this.columns.of(uri) ?? vscode.ViewColumn.One;
    const editor = await vscode.window.showTextDocument(document, { viewColumn, selection });
    editor.revealRange(selection, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  }

  /**
   * Selects the line that draws it, where the program is what is worked on: it is in sight, and the drawing's text is not.
   * @returns whether it did
   */
  private async revealProgram(drawing: vscode.Uri, span: Span): Promise<boolean> {
    const { visibleTextEditors } = vscode.window;
    const isText = visibleTextEditors.some(({ document }) => document.uri.toString() === drawing.toString());
    const isProgram = visibleTextEditors.some(({ document }) => this.programs.draws(document.uri, drawing));
    if (isText || !isProgram) return false;
    const place = await this.client.drawnBy(drawing, span);
    if (!place) return false;
    const uri = vscode.Uri.parse(place.uri);
    const { start, end } = place.range;
    const selection = new vscode.Range(start.line, start.character, end.line, end.character);
    const viewColumn = this.columns.of(uri) ?? vscode.ViewColumn.One;
    const document = await vscode.workspace.openTextDocument(uri);
    const editor = await vscode.window.showTextDocument(document, { viewColumn, selection });
    editor.revealRange(selection, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
    return true;
  }

  private draw(format: 'png' | 'svg'): Promise<Uint8Array | undefined> {
    this.drawn?.(undefined);
    return new Promise((resolve) => {
      this.drawn = resolve;
      this.post({ type: 'draw', format });
    });
  }
}

/** Bridges that are put into the text of a drawing go with the next run of its program. */
async function askAboutDrawn(drawing: vscode.Uri): Promise<'add' | 'kept' | 'left'> {
  const [keep, add] = [vscode.l10n.t('Keep Bridges'), vscode.l10n.t('Add Anyway')];
  const said = vscode.l10n.t('A program draws this file: its next run makes it anew, without what is added here.');
  const chosen = await vscode.window.showWarningMessage(said, keep, add);
  if (chosen === keep) await vscode.commands.executeCommand(KEEP_BRIDGES, drawing.toString());
  return chosen === add ? 'add' : chosen === keep ? 'kept' : 'left';
}

/** What a message calls itself, for the log. */
function kindOf(message: unknown): string {
  const type = (message as { readonly type?: unknown } | null | undefined)?.type;
  return typeof type === 'string' ? oneLine(type).slice(0, 50) : typeof message;
}

/** Whether it may say the order of the stack: a `tombolo.json` in the document's folder or above it. */
function isConfigOf(uri: vscode.Uri, document: vscode.Uri): boolean {
  return uri.path.endsWith(`/${CONFIG_NAME}`) && document.path.startsWith(uri.path.slice(0, -CONFIG_NAME.length));
}
