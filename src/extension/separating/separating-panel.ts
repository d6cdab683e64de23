/** One panel: a picture and its print, with the dials between them. */
import * as vscode from 'vscode';
import { CONFIG_NAME } from '../../config/types';
import { count } from '../../config/values';
import type { FromPicturePage, FromSeparator, ToPicturePage } from '../../protocol/separating';
import { isFromPicturePage } from '../../protocol/separating-guard';
import { noticeText } from '../../text/notice';
import { ownPage } from '../own-page';
import { SeparatorThread } from './separator-thread';
import { drawingName, folderFor, relativePath, textAt, writeSheets } from './sheet-files';

const { l10n, window, workspace } = vscode;

/** Bytes of a picture's file. */
const LARGEST = 100e6;

export class SeparatingPanel {
  readonly panel: vscode.WebviewPanel;
  readonly picture: vscode.Uri;
  private readonly thread: SeparatorThread;
  private readonly log: vscode.LogOutputChannel;
  private folder: vscode.Uri;
  /** The number of the sheets that are being made. */
  private writing: number | undefined;

  constructor(
    panel: vscode.WebviewPanel,
    picture: vscode.Uri,
    { extensionUri, log }: { readonly extensionUri: vscode.Uri; readonly log: vscode.LogOutputChannel },
  ) {
    this.panel = panel;
    this.picture = picture;
    this.log = log;
    this.folder = vscode.Uri.joinPath(picture, '..');
    const script = vscode.Uri.joinPath(extensionUri, 'dist/separator.cjs').fsPath;
    this.thread = new SeparatorThread(
      script,
      (message) => void this.answered(message),
      (reason) => this.failed(reason),
    );
    panel.title = l10n.t('Sheets of {0}', nameOf(picture));
    panel.iconPath = vscode.Uri.joinPath(extensionUri, 'media/icon.png');
    panel.webview.options = {
      enableScripts: true,
      localResourceRoots: [vscode.Uri.joinPath(extensionUri, 'dist')],
    };
    panel.webview.onDidReceiveMessage((message: unknown) => {
      if (isFromPicturePage(message)) void this.hear(message);
      else log.warn('A message of the picture panel was not taken.');
    });
    panel.onDidDispose(() => this.thread.dispose());
    panel.webview.html = ownPage(panel.webview, extensionUri, {
      name: 'separating',
      title: 'Picture to Sheets',
      // Masks of hatches are pictures of our own, by way of data addresses.
      allows: 'img-src data:',
      uri: picture,
    });
  }

  private async hear(message: FromPicturePage): Promise<void> {
    if (message.type === 'ready') await this.open();
    else if (message.type === 'separate') this.thread.ask(message);
    else if (message.type === 'write') await this.write(message);
    else if (message.type === 'stop') this.thread.stop();
    else await this.chooseFolder();
  }

  private async open(): Promise<void> {
    this.folder = await folderFor(this.picture);
    try {
      const { size } = await workspace.fs.stat(this.picture);
      if (size > LARGEST) return this.refuse(l10n.t('is larger than {0} MB', String(LARGEST / 1e6)));
      const bytes = await workspace.fs.readFile(this.picture);
      this.thread.ask({ type: 'open', bytes, before: await textAt(this.config) });
    } catch (error) {
      this.refuse(l10n.t('could not be read: {0}', error instanceof Error ? error.message : String(error)));
    }
  }

  private get config(): vscode.Uri {
    return vscode.Uri.joinPath(this.folder, CONFIG_NAME);
  }

  private async write({ id, dials }: Extract<FromPicturePage, { readonly type: 'write' }>): Promise<void> {
    this.writing = id;
    this.post({ type: 'writing', isWriting: true, said: l10n.t('Drawing the sheets, and adding bridges…') });
    const picture = relativePath(this.folder, this.picture);
    const project = { file: drawingName(this.picture), picture, before: await textAt(this.config) };
    this.thread.ask({ type: 'sheets', id, dials, project });
  }

  private async chooseFolder(): Promise<void> {
    const [folder] =
      (await window.showOpenDialog({
        canSelectFiles: false,
        canSelectFolders: true,
        defaultUri: vscode.Uri.joinPath(this.picture, '..'),
        openLabel: l10n.t('Put the Sheets Here'),
        title: l10n.t('Folder for the Sheets'),
      })) ?? [];
    if (!folder) return;
    this.folder = folder;
    this.post({ type: 'folder', folder: workspace.asRelativePath(folder, false) });
  }

  private async answered(message: FromSeparator): Promise<void> {
    if (message.type === 'opened') {
      const { picture, dials } = message;
      const folder = workspace.asRelativePath(this.folder, false);
      this.post({ type: 'picture', name: nameOf(this.picture), picture, dials, folder });
    } else if (message.type === 'answer') this.post(message);
    else if (message.type === 'sheets') await this.written(message);
    else if (message.id === this.writing)
      this.endWriting(message.type === 'stopped' ? l10n.t('Stopped.') : message.message);
    else if (message.type === 'refused') this.refuse(message.message, message.id);
  }

  private async written({
    drawing,
    config,
    bridges,
    islands,
    twoSheets,
  }: Extract<FromSeparator, { type: 'sheets' }>): Promise<void> {
    const file = drawingName(this.picture);
    try {
      const shown = await writeSheets({ folder: this.folder, file, drawing, config });
      const left = islands === 0 ? '' : l10n.t(', {0} left', count(islands, 'island'));
      const doubled = twoSheets.map((name) => l10n.t(' "{0}" is cut as two sheets in one paint.', name)).join('');
      const said = l10n.t('{0} written, {1} added{2}.', file, count(bridges, 'bridge'), left) + doubled;
      this.endWriting(shown ? said : '');
      if (shown) await vscode.commands.executeCommand('tombolo.openBench', shown);
    } catch (error) {
      this.endWriting(l10n.t('Nothing was written.'));
      const reason = error instanceof Error ? error.message : String(error);
      void window.showErrorMessage(noticeText(l10n.t('The sheets were not written: {0}', reason)));
    }
  }

  private endWriting(said: string): void {
    this.writing = undefined;
    this.post({ type: 'writing', isWriting: false, said });
  }

  private failed(reason: string): void {
    this.log.error(`The picture's thread ended: ${reason}`);
    this.refuse(l10n.t('could not be separated: {0}', reason));
  }

  private refuse(message: string, id = 0): void {
    this.post({ type: 'refused', id, message });
  }

  private post(message: ToPicturePage): void {
    void this.panel.webview.postMessage(message);
  }
}

function nameOf({ path }: vscode.Uri): string {
  return path.split('/').at(-1) ?? '';
}
