/** Check the Workspace: every stencil in the open folders, whether it is open or not. */
import * as vscode from 'vscode';
import { count } from '../config/values';
import type { FileChecked } from '../protocol/index';
import type { ServerClient } from './server-client';

const { l10n, window } = vscode;

/** Milliseconds for which the status bar tells what was found. */
const TOLD_FOR = 8000;

export async function checkWorkspace(client: ServerClient): Promise<void> {
  const files = await vscode.workspace.findFiles('**/*.svg', '**/node_modules/**');
  const options = {
    location: vscode.ProgressLocation.Notification,
    title: l10n.t('Checking the stencils of this workspace'),
    cancellable: true,
  };
  const checked = await window.withProgress(options, (progress, token) => checkAll(files, client, progress, token));
  const found = { error: 0, warning: 0 };
  for (const { counts } of checked) {
    found.error += counts.error;
    found.warning += counts.warning;
  }
  const what = `${count(found.error, 'error')}, ${count(found.warning, 'warning')}`;
  window.setStatusBarMessage(l10n.t('{0} checked: {1}', count(checked.length, 'stencil'), what), TOLD_FOR);
  if (found.error + found.warning > 0) await vscode.commands.executeCommand('workbench.actions.view.problems');
}

/** One after the other: what is found is shown meanwhile. */
async function checkAll(
  files: readonly vscode.Uri[],
  client: ServerClient,
  progress: vscode.Progress<{ message?: string; increment?: number }>,
  token: vscode.CancellationToken,
): Promise<FileChecked[]> {
  const checked: FileChecked[] = [];
  for (const file of files) {
    if (token.isCancellationRequested) break;
    progress.report({ message: vscode.workspace.asRelativePath(file), increment: 100 / files.length });
    const answer = await client.checkFile(file);
    if (answer?.stencil) checked.push(answer);
  }
  return checked;
}
