import * as vscode from 'vscode';
import type { PictureFormat } from '../protocol/webview';
import { noticeText } from '../text/notice';

const { l10n } = vscode;

/** Asks where the picture goes, has it drawn, and writes it. The ending of the name says which kind it is. */
export async function savePicture(
  document: vscode.Uri,
  draw: (format: PictureFormat) => Promise<Uint8Array | undefined>,
): Promise<void> {
  const name = document.path.replace(/^.*\//, '').replace(/\.svg$/i, '');
  const target = await vscode.window.showSaveDialog({
    title: l10n.t('Save the picture'),
    saveLabel: l10n.t('Save picture'),
    defaultUri: vscode.Uri.joinPath(document, '..', `${name}-picture.png`),
    filters: { [l10n.t('PNG picture')]: ['png'], [l10n.t('SVG picture')]: ['svg'] },
  });
  if (!target) return;
  if (target.toString() === document.toString()) {
    void vscode.window.showWarningMessage(l10n.t('This is the stencil itself; give the picture another name.'));
    return;
  }
  const bytes = await draw(/\.svg$/i.test(target.path) ? 'svg' : 'png');
  if (!bytes) {
    void vscode.window.showWarningMessage(l10n.t('The picture could not be drawn.'));
    return;
  }
  try {
    await vscode.workspace.fs.writeFile(target, bytes);
    vscode.window.setStatusBarMessage(l10n.t('Picture saved as {0}.', target.path.replace(/^.*\//, '')), 6000);
  } catch (error) {
    void vscode.window.showErrorMessage(
      noticeText(l10n.t('The picture was not saved: {0}', error instanceof Error ? error.message : String(error))),
    );
  }
}
