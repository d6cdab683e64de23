import * as vscode from 'vscode';
import type { PictureFormat } from '../protocol/webview';

/** Asks where the picture goes, has it drawn, and writes it. The ending of the name says which kind it is. */
export async function savePicture(
  document: vscode.Uri,
  draw: (format: PictureFormat) => Promise<Uint8Array | undefined>,
): Promise<void> {
  const name = document.path.replace(/^.*\//, '').replace(/\.svg$/i, '');
  const target = await vscode.window.showSaveDialog({
    title: 'Save the picture',
    saveLabel: 'Save picture',
    defaultUri: vscode.Uri.joinPath(document, '..', `${name}-picture.png`),
    filters: { 'PNG picture': ['png'], 'SVG picture': ['svg'] },
  });
  if (!target) return;
  if (target.toString() === document.toString()) {
    void vscode.window.showWarningMessage('This is the stencil itself; give the picture another name.');
    return;
  }
  const bytes = await draw(/\.svg$/i.test(target.path) ? 'svg' : 'png');
  if (!bytes) {
    void vscode.window.showWarningMessage('The picture could not be drawn.');
    return;
  }
  try {
    await vscode.workspace.fs.writeFile(target, bytes);
    vscode.window.setStatusBarMessage(`Picture saved as ${target.path.replace(/^.*\//, '')}.`, 6000);
  } catch (error) {
    void vscode.window.showErrorMessage(
      `The picture was not saved: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}
