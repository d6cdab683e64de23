/** Which documents are ours to look at, told without reading more than we must. */
import * as vscode from 'vscode';
import { CONFIG_NAME } from '../config/types';

const schemes = ['file', 'untitled', 'vscode-vfs'];

export const SVG = schemes.map((scheme) => ({ scheme, pattern: '**/*.svg' }));
export const CONFIG = schemes.map((scheme) => ({ scheme, pattern: `**/${CONFIG_NAME}` }));

export const isSvg = (document: vscode.TextDocument): boolean => vscode.languages.match(SVG, document) > 0;
export const isConfig = (document: vscode.TextDocument): boolean => vscode.languages.match(CONFIG, document) > 0;

/**
 * Whether a document could be a stencil: it has one of our attributes, or a `tombolo.json` beside or above it. The
 * server looks closer; this only decides whether it is started.
 */
export async function mayBeStencil(document: vscode.TextDocument): Promise<boolean> {
  if (isConfig(document)) return true;
  return isSvg(document) && (isMarked(document) || (await hasConfigAbove(document.uri)));
}

const MARK = 'data-tombolo-';

/** Whether the text holds one of our attributes, or looks as if it did. */
export const isMarked = (document: vscode.TextDocument): boolean => document.getText().includes(MARK);

/** The same of a file that is not open as text. */
export async function mayBeStencilFile(uri: vscode.Uri): Promise<boolean> {
  if (await hasConfigAbove(uri)) return true;
  try {
    return Buffer.from(await vscode.workspace.fs.readFile(uri)).includes(MARK);
  } catch {
    // Gone, or not ours to read.
    return false;
  }
}

async function hasConfigAbove(uri: vscode.Uri): Promise<boolean> {
  for (let folder = vscode.Uri.joinPath(uri, '..'); ; folder = vscode.Uri.joinPath(folder, '..')) {
    if (await isThere(vscode.Uri.joinPath(folder, CONFIG_NAME))) return true;
    if (folder.path === '/' || folder.path === vscode.Uri.joinPath(folder, '..').path) return false;
  }
}

export async function isThere(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}

/** What the active tab shows, be it text or the picture that the editor opens SVG files in. */
export function activeResource(): vscode.Uri | undefined {
  const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
  if (input instanceof vscode.TabInputText || input instanceof vscode.TabInputCustom) return input.uri;
  return vscode.window.activeTextEditor?.document.uri;
}
