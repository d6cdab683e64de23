/** New Stencil…: a drawing to start from, of a size and with as many layers as were asked for. */
import * as vscode from 'vscode';
import { isThere } from '../svg-documents';
import { parseSides } from './lengths';
import { MOST_LAYERS, stencilTemplate } from './template';

const { l10n, window, workspace } = vscode;

/** A new document, which is written to disk when it is saved. */
export async function newStencil(): Promise<void> {
  const text = await askForTemplate();
  if (text === undefined) return;
  const document = await workspace.openTextDocument(await freeName());
  await insert(document, text);
  await window.showTextDocument(document, { preview: false });
}

/** The same in a document without text. */
export async function fillWithTemplate(document: vscode.TextDocument): Promise<void> {
  const text = await askForTemplate();
  if (text !== undefined) await insert(document, text);
}

async function insert({ uri }: vscode.TextDocument, text: string): Promise<void> {
  const change = new vscode.WorkspaceEdit();
  change.insert(uri, new vscode.Position(0, 0), text);
  await workspace.applyEdit(change);
}

async function askForTemplate(): Promise<string | undefined> {
  const size = await window.showInputBox({
    title: l10n.t('New stencil (1 of 2): size'),
    prompt: l10n.t('Finished width × height of the artwork, in mm'),
    value: '148 × 105',
    ignoreFocusOut: true,
    validateInput: (text) => (parseSides(text) ? undefined : l10n.t('Enter two lengths, such as 148 × 105.')),
  });
  const sides = size === undefined ? undefined : parseSides(size);
  if (!sides) return undefined;
  const counts = Array.from({ length: MOST_LAYERS }, (_, index) => ({
    count: index + 1,
    label: index === 0 ? l10n.t('1 layer') : l10n.t('{0} layers', index + 1),
    detail: index === 0 ? l10n.t('One colour, one sheet.') : l10n.t('{0} colours, a sheet for each.', index + 1),
  }));
  const picked = await window.showQuickPick(counts, {
    title: l10n.t('New stencil (2 of 2): layers'),
    placeHolder: l10n.t('How many colours are sprayed?'),
    ignoreFocusOut: true,
  });
  return picked && stencilTemplate(sides, picked.count);
}

/** In the folder that is worked in, under a name that nothing has there. */
async function freeName(): Promise<vscode.Uri> {
  const folder = folderAtWork();
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? 'stencil.svg' : `stencil-${number}.svg`;
    if (!folder) return vscode.Uri.from({ scheme: 'untitled', path: name });
    const file = vscode.Uri.joinPath(folder, name);
    const uri = file.with({ scheme: 'untitled' });
    const isOpen = workspace.textDocuments.some((document) => document.uri.path === uri.path);
    if (!isOpen && !(await isThere(file))) return uri;
  }
}

function folderAtWork(): vscode.Uri | undefined {
  const active = window.activeTextEditor?.document.uri;
  if (active?.scheme === 'file') return vscode.Uri.joinPath(active, '..');
  return workspace.workspaceFolders?.find(({ uri }) => uri.scheme === 'file')?.uri;
}
