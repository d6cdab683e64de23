/** Set Up as Stencil…: a `tombolo.json` beside the drawing, and the size in the drawing itself, in one step of undo. */
import * as vscode from 'vscode';
import { newConfigText } from '../../config/new-config';
import { CONFIG_NAME } from '../../config/types';
import { parseLength } from '../../config/values';
import type { Beginning } from '../../protocol/index';
import type { TextEdit } from '../../text/text';
import type { ServerClient } from '../server-client';
import { fillWithTemplate } from './new-stencil';
import { type Answers, askForStencil, askWidth } from './questions';

const { l10n, window } = vscode;

/** Milliseconds for which the status bar tells what was done. */
const TOLD_FOR = 8000;

/** mm: a width that differs by less is the one that the drawing states. */
const SAME_WIDTH = 0.005;

/** Nothing is written where a question is left with Escape. */
export async function setUpStencil(document: vscode.TextDocument, client: ServerClient): Promise<void> {
  if (document.getText().trim() === '') return fillWithTemplate(document);
  const beginning = await client.beginning(document.uri);
  if (!beginning) {
    void window.showWarningMessage(l10n.t('This file has no <svg> element to set up as a stencil.'));
  } else if (beginning.stencil) {
    void window.showInformationMessage(l10n.t('This file is set up as a stencil already.'));
  } else if (document.uri.scheme === 'file') await setUpProject(document, beginning, client);
  else await setUpAlone(document, beginning, client);
}

async function setUpProject(document: vscode.TextDocument, beginning: Beginning, client: ServerClient): Promise<void> {
  const answers = await askForStencil(beginning);
  if (!answers) return;
  const config = vscode.Uri.joinPath(document.uri, '..', CONFIG_NAME);
  const width = (await isAlone(document.uri)) ? unlessStated(answers, beginning) : undefined;
  const contents = new TextEncoder().encode(newConfigText({ ...answers, width }));
  const change = await sizeChange(document, answers.width, client);
  // Never writes over a file that is there.
  change?.createFile(config, { overwrite: false, ignoreIfExists: false, contents });
  if (!change || !(await vscode.workspace.applyEdit(change))) {
    void window.showWarningMessage(l10n.t('Nothing was written: the drawing has changed, or there is a tombolo.json.'));
    return;
  }
  window.setStatusBarMessage(
    l10n.t('Set up as stencil, {0} wide. Its settings are in tombolo.json.', answers.width),
    TOLD_FOR,
  );
  await client.checkAgain(document.uri);
}

/** Elsewhere than on a disk no project file is looked for: the drawing itself is marked. */
async function setUpAlone(document: vscode.TextDocument, beginning: Beginning, client: ServerClient): Promise<void> {
  const width = await askWidth(beginning);
  if (width === undefined) return;
  const change = await sizeChange(document, width, client, true);
  if (change && (await vscode.workspace.applyEdit(change))) await client.checkAgain(document.uri);
}

/** The project file holds for all drawings beside it: of what size those are they say themselves. */
async function isAlone(uri: vscode.Uri): Promise<boolean> {
  const names = await vscode.workspace.fs.readDirectory(vscode.Uri.joinPath(uri, '..'));
  return names.filter(([name]) => name.endsWith('.svg')).length <= 1;
}

/** What the project file has to say of the width; nothing where the drawing says the same. */
function unlessStated({ width }: Answers, beginning: Beginning): string | undefined {
  const isSame = Math.abs((parseLength(width) ?? 0) - beginning.width) < SAME_WIDTH;
  return beginning.sizeStated && isSame ? undefined : width;
}

/** @returns undefined where the drawing has changed meanwhile */
async function sizeChange(
  document: vscode.TextDocument,
  width: string,
  client: ServerClient,
  marked = false,
): Promise<vscode.WorkspaceEdit | undefined> {
  const answer = await client.beginning(document.uri, width);
  if (!answer || answer.version !== document.version) return undefined;
  const change = new vscode.WorkspaceEdit();
  const edits: readonly TextEdit[] = [...(marked ? answer.edits : []), ...(answer.sizeEdits ?? [])];
  for (const { span, text } of edits) {
    change.replace(document.uri, new vscode.Range(document.positionAt(span.from), document.positionAt(span.to)), text);
  }
  return change;
}
