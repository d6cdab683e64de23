/** What the palette and the menus offer. */
import * as vscode from 'vscode';
import { count } from '../config/values';
import { beginProject } from './begin';
import type { Bench } from './bench';
import { applyVersionedEdits } from './edit-documents';
import type { ServerClient } from './server-client';
import { activeResource } from './svg-documents';

export function registerCommands(client: ServerClient, bench: Bench): vscode.Disposable[] {
  /** Menus hand over the file they were opened on; the palette means the active one. */
  const register = (name: string, action: (uri: vscode.Uri) => Promise<void>) =>
    vscode.commands.registerCommand(`tombolo.${name}`, async (given?: vscode.Uri) => {
      // The menu of the bench's own tab hands over the address of the tab.
      const file = given instanceof vscode.Uri && given.scheme !== 'webview-panel' ? given : undefined;
      const uri = file ?? bench.focused ?? activeResource();
      if (uri) await action(uri);
    });
  return [
    register('openBench', (uri) => openBench(uri, bench)),
    register('openAnotherBench', (uri) => bench.openAnother(uri)),
    register('begin', (uri) => begin(uri, client)),
    register('bridgeIslands', (uri) => bridgeIslands(uri, client)),
    register('wrapPathData', (uri) => wrapPathData(uri, client)),
    register('checkAgain', (uri) => client.checkAgain(uri)),
    vscode.commands.registerCommand('tombolo.showLog', () => client.log.show()),
  ];
}

/** The text, with the bench beside it. Opens the text by name, so that no editor association is asked or changed. */
async function openBench(uri: vscode.Uri, bench: Bench): Promise<void> {
  await showText(uri);
  await bench.open(uri);
  await showText(uri);
}

async function showText(uri: vscode.Uri): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(uri);
  const address = uri.toString();
  const shown = vscode.window.visibleTextEditors.find((editor) => editor.document.uri.toString() === address);
  const viewColumn = shown?.viewColumn ?? vscode.ViewColumn.Active;
  await vscode.window.showTextDocument(document, { viewColumn, preview: false });
  return document;
}

async function begin(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const document = await showText(uri);
  const beginning = await client.beginning(uri);
  if (!beginning) {
    void vscode.window.showWarningMessage('This file has no <svg> element to begin a stencil with.');
    return;
  }
  if (!beginning.stencil && !(await beginProject(uri, beginning))) await applyVersionedEdits(document, beginning);
  await client.checkAgain(uri);
}

async function wrapPathData(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const document = await showText(uri);
  const wrapped = await client.wrapPaths(uri);
  if (!wrapped) return;
  if (wrapped.edits.length > 0) await applyVersionedEdits(document, wrapped);
  else vscode.window.setStatusBarMessage('No path data are on lines that are too long.', 6000);
}

async function bridgeIslands(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const document = await showText(uri);
  const bridged = await client.bridgeIslands(uri);
  if (!bridged) return;
  for (const refusal of bridged.refusals) client.log.warn(refusal);
  if (bridged.edits.length > 0) await applyVersionedEdits(document, bridged);
  const { bridges, refusals } = bridged;
  const added = bridges === 0 ? 'No bridge was added' : `${count(bridges, 'bridge')} added`;
  if (refusals.length === 0) {
    vscode.window.setStatusBarMessage(bridges === 0 ? 'There is no island to bridge.' : `${added}.`, 6000);
    return;
  }
  const left = refusals.length === 1 ? 'One island is left' : `${refusals.length} islands are left`;
  const answer = await vscode.window.showWarningMessage(`${added}. ${left}: ${refusals[0] ?? ''}`, 'Show Log');
  if (answer) client.log.show();
}
