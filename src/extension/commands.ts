/** What the palette and the menus offer. */
import * as vscode from 'vscode';
import { count } from '../config/values';
import { noticeText } from '../text/notice';
import { oneLine } from '../text/plain-text';
import type { Bench } from './bench';
import { offerBestOrder } from './best-order';
import { checkWorkspace } from './check-workspace';
import { writeCutFiles, writeJob } from './cutting/write-cut';
import { applyVersionedEdits } from './edit-documents';
import type { KnownPrograms } from './programs/known-programs';
import type { ServerClient } from './server-client';
import { newStencil } from './setup/new-stencil';
import { setUpStencil } from './setup/set-up';
import { activeResource } from './svg-documents';

const { l10n, window } = vscode;

/** Milliseconds for which the status bar tells what was done. */
const TOLD_FOR = 6000;

/** What is looked at: the bench, and programs whose drawings it shows. */
interface Shown {
  readonly bench: Bench;
  readonly programs: KnownPrograms;
}

/** @param extension the extension's id */
export function registerCommands(client: ServerClient, shown: Shown, extension: string): vscode.Disposable[] {
  const { bench, programs } = shown;
  const { registerCommand } = vscode.commands;
  /** Menus hand over the file they were opened on; the palette means the active one. */
  const onFile = (name: string, action: (uri: vscode.Uri) => Promise<void>) =>
    registerCommand(`tombolo.${name}`, async (given?: vscode.Uri) => {
      // The menu of the bench's own tab hands over the address of the tab.
      const file = given instanceof vscode.Uri && given.scheme !== 'webview-panel' ? given : undefined;
      const uri = file ?? bench.focused ?? activeResource();
      if (uri) await action(uri);
    });
  return [
    onFile('openBench', (uri) => openBench(uri, bench, programs)),
    onFile('openAnotherBench', (uri) => bench.openAnother(uri)),
    onFile('begin', async (uri) => setUpStencil(await showText(uri), client)),
    onFile('bridgeIslands', (uri) => bridgeIslands(uri, client)),
    onFile('fewestIslands', (uri) => offerBestOrder(uri, client)),
    onFile('fixAll', (uri) => applySafeFixes(uri, client)),
    onFile('wrapPathData', (uri) => wrapPathData(uri, client)),
    onFile('writeCutFiles', (uri) => writeCutFiles(uri, client)),
    onFile('writeJob', (uri) => writeJob(uri, client)),
    onFile('checkAgain', (uri) => client.checkAgain(uri)),
    registerCommand('tombolo.newStencil', newStencil),
    registerCommand('tombolo.checkWorkspace', () => checkWorkspace(client)),
    registerCommand('tombolo.restartServer', () => restart(client)),
    registerCommand('tombolo.showLog', () => client.log.show()),
    registerCommand('tombolo.goTo', goTo),
    registerCommand('tombolo.openConfig', (address: string) => openBeside(vscode.Uri.parse(address))),
    registerCommand('tombolo.firstSteps', () =>
      vscode.commands.executeCommand('workbench.action.openWalkthrough', `${extension}#tombolo.firstSteps`, false),
    ),
  ];
}

/** The text, with the bench beside it. Opens the text by name, so that no editor association is asked or changed. */
async function openBench(uri: vscode.Uri, bench: Bench, programs: KnownPrograms): Promise<void> {
  const drawings = programs.drawingsOf(uri);
  if (drawings.length > 0) {
    const drawing = await chooseDrawing(drawings);
    if (drawing) await bench.openBeside(uri, drawing);
    return;
  }
  await showText(uri);
  await bench.open(uri);
  await showText(uri);
}

/** @returns undefined where the question is put aside */
async function chooseDrawing(drawings: readonly vscode.Uri[]): Promise<vscode.Uri | undefined> {
  const [first, ...others] = drawings;
  if (others.length === 0) return first;
  const items = drawings.map((uri) => ({ label: vscode.workspace.asRelativePath(uri), uri }));
  const chosen = await window.showQuickPick(items, { title: l10n.t('Which drawing of this program?') });
  return chosen?.uri;
}

async function showText(uri: vscode.Uri): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(uri);
  const address = uri.toString();
  const shown = window.visibleTextEditors.find((editor) => editor.document.uri.toString() === address);
  const viewColumn = shown?.viewColumn ?? vscode.ViewColumn.Active;
  await window.showTextDocument(document, { viewColumn, preview: false });
  return document;
}

/** What the server has done after a fix: the caret goes to where the artist writes on. */
async function goTo(address: string, { line, character }: { line: number; character: number }): Promise<void> {
  const uri = vscode.Uri.parse(address).toString();
  const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri);
  if (!editor) return;
  const place = new vscode.Position(line, character);
  const { document, viewColumn } = editor;
  await window.showTextDocument(document, {
    ...(viewColumn !== undefined && { viewColumn }),
    selection: new vscode.Range(place, place),
  });
}

async function openBeside(uri: vscode.Uri): Promise<void> {
  const document = await vscode.workspace.openTextDocument(uri);
  await window.showTextDocument(document, { viewColumn: vscode.ViewColumn.Beside });
}

async function wrapPathData(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const document = await showText(uri);
  const wrapped = await client.wrapPaths(uri);
  if (!wrapped) return;
  if (wrapped.edits.length > 0) await applyVersionedEdits(document, wrapped);
  else window.setStatusBarMessage(l10n.t('No path data are on lines that are too long.'), TOLD_FOR);
}

async function bridgeIslands(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const document = await showText(uri);
  const first = await client.bridgeIslands(uri);
  const cutCovered = first && first.covered > 0 ? await asksToCut(first.covered) : false;
  if (cutCovered === undefined) return;
  const bridged = cutCovered ? await client.bridgeIslands(uri, true) : first;
  if (!bridged) return;
  for (const refusal of bridged.refusals) client.log.warn(oneLine(refusal));
  if (bridged.edits.length > 0) await applyVersionedEdits(document, bridged);
  const { bridges, refusals, cutAway } = bridged;
  const cut = cutAway > 0 ? [l10n.t('{0} cut away', count(cutAway, 'island'))] : [];
  const bridging = bridges === 0 ? l10n.t('no bridge was added') : l10n.t('{0} added', count(bridges, 'bridge'));
  const added = sentence([...cut, bridging].join('; '));
  if (refusals.length === 0) {
    const isNothing = bridges === 0 && cutAway === 0;
    window.setStatusBarMessage(isNothing ? l10n.t('There is no island to bridge.') : `${added}.`, TOLD_FOR);
    return;
  }
  const left = l10n.t('{0} could not be bridged', count(refusals.length, 'island'));
  const show = l10n.t('Show Them');
  if ((await window.showWarningMessage(`${added}; ${left}.`, show)) === show) client.log.show();
}

/** @returns undefined where the question is put aside */
async function asksToCut(covered: number): Promise<boolean | undefined> {
  const [cut, bridge] = [l10n.t('Cut Them Away'), l10n.t('Bridge All')];
  const islands = count(covered, 'island');
  const said =
    covered === 1
      ? l10n.t('{0} needs no bridge: later layers paint over it.', islands)
      : l10n.t('{0} need no bridge: later layers paint over them.', islands);
  const choice = await window.showInformationMessage(said, cut, bridge);
  return choice === undefined ? undefined : choice === cut;
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Says so where there is nothing to apply. */
async function applySafeFixes(uri: vscode.Uri, client: ServerClient): Promise<void> {
  await showText(uri);
  const fixes = await client.safeFixes(uri);
  if (!fixes) return;
  if ('refusal' in fixes) {
    void window.showInformationMessage(noticeText(fixes.refusal));
    return;
  }
  for (const { uri: address, ...edits } of fixes.documents) {
    const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(address));
    await applyVersionedEdits(document, edits);
  }
  window.setStatusBarMessage(l10n.t('All safe fixes were applied.'), TOLD_FOR);
}

async function restart(client: ServerClient): Promise<void> {
  await client.restart();
  window.setStatusBarMessage(l10n.t('The Tombolo server runs again.'), TOLD_FOR);
}
