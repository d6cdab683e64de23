/** What is offered at a program's lines about its drawings: none of it changes a drawing, which the next run makes anew. */
import * as vscode from 'vscode';
import { configEdits } from '../../config/edit-config';
import { acceptanceEdits } from '../../config/keep-acceptance';
import { CONFIG_NAME } from '../../config/types';
import { count } from '../../config/values';
import { ACCEPT_DRAWN, type AcceptDrawn, KEEP_BRIDGES, OPEN_DRAWING } from '../../protocol/programs';
import { noticeText } from '../../text/notice';
import type { TextEdit } from '../../text/text';
import type { ServerClient } from '../server-client';
import { configAbove, isThere } from '../svg-documents';

const { l10n, window } = vscode;

/** Milliseconds for which the status bar tells what was done. */
const TOLD_FOR = 8000;

export function registerDrawingCommands(client: ServerClient): vscode.Disposable[] {
  const { registerCommand } = vscode.commands;
  return [
    registerCommand(OPEN_DRAWING, (uri: string, range?: vscode.Range) => openDrawing(vscode.Uri.parse(uri), range)),
    registerCommand(KEEP_BRIDGES, (uri: string) => keepBridges(vscode.Uri.parse(uri), client)),
    registerCommand(ACCEPT_DRAWN, (accepted: AcceptDrawn) => acceptDrawn(accepted)),
  ];
}

async function openDrawing(uri: vscode.Uri, range?: vscode.Range): Promise<void> {
  const document = await vscode.workspace.openTextDocument(uri);
  const selection =
    range && new vscode.Range(range.start.line, range.start.character, range.end.line, range.end.character);
  await window.showTextDocument(document, { preview: false, ...(selection && { selection }) });
}

/** The file of a plan, beside `tombolo.json`. */
const PLAN = 'bridges.json';

/** A plan of the drawing's bridges beside its `tombolo.json`, which names it: each build gets the same. */
async function keepBridges(drawing: vscode.Uri, client: ServerClient): Promise<void> {
  const kept = await client.keptPlan(drawing);
  if (!kept) return;
  if (kept.bridges === 0) {
    const [why] = kept.refusals;
    void window.showInformationMessage(why === undefined ? l10n.t('There is no island to bridge.') : noticeText(why));
    return;
  }
  const config = (await configAbove(drawing)) ?? vscode.Uri.joinPath(drawing, '..', CONFIG_NAME);
  const plan = vscode.Uri.joinPath(config, '..', PLAN);
  if ((await isThere(plan)) && !(await agreesToReplace())) return;
  await vscode.workspace.fs.writeFile(plan, new TextEncoder().encode(kept.text));
  await editConfig(config, (text) => configEdits(text, ['bridges', 'plan'], PLAN));
  const said = l10n.t('{0} kept in {1}: each watched run puts them in.', count(kept.bridges, 'bridge'), PLAN);
  window.setStatusBarMessage(said, TOLD_FOR);
}

/** It may be for another drawing. */
async function agreesToReplace(): Promise<boolean> {
  const replace = l10n.t('Replace');
  const said = l10n.t('There is a plan of bridges already: {0}', PLAN);
  return (await window.showWarningMessage(said, { modal: true }, replace)) === replace;
}

async function acceptDrawn({ check, drawing, config: address, parts, where }: AcceptDrawn): Promise<void> {
  const reason = await window.showInputBox({
    title: l10n.t('Ignore {0} in {1}', check, where),
    prompt: l10n.t('Why is it fine? The reason stands in tombolo.json.'),
    validateInput: (text) => (text.trim() === '' ? l10n.t('Without a reason it is not ignored.') : undefined),
  });
  if (reason === undefined) return;
  const uri = vscode.Uri.parse(drawing);
  const config = address === undefined ? vscode.Uri.joinPath(uri, '..', CONFIG_NAME) : vscode.Uri.parse(address);
  // The one that holds lies in the drawing's folder or above it.
  const file = uri.path.slice(vscode.Uri.joinPath(config, '..').path.replace(/\/$/, '').length + 1);
  const accepted = parts.map((part) => ({ file, ...part, reason: reason.trim() }));
  await editConfig(config, (text) => acceptanceEdits(text, check, accepted));
}

/** Changes a `tombolo.json`, made if there is none, and saves it unless somebody is at work on it. */
async function editConfig(config: vscode.Uri, editsOf: (text: string) => TextEdit[]): Promise<void> {
  if (!(await isThere(config))) await vscode.workspace.fs.writeFile(config, new TextEncoder().encode('{}\n'));
  const document = await vscode.workspace.openTextDocument(config);
  const wasDirty = document.isDirty;
  const change = new vscode.WorkspaceEdit();
  for (const { span, text } of editsOf(document.getText())) {
    change.replace(config, new vscode.Range(document.positionAt(span.from), document.positionAt(span.to)), text);
  }
  if ((await vscode.workspace.applyEdit(change)) && !wasDirty) await document.save();
}
