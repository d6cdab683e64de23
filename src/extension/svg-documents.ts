/** Which documents are ours to look at, told without reading more than we must. */
import * as vscode from 'vscode';
import { CONFIG_NAME } from '../config/types';

const schemes = ['file', 'untitled', 'vscode-vfs', 'vscode-remote', 'vscode-test-web', 'memfs'];

export const SVG = schemes.map((scheme) => ({ scheme, pattern: '**/*.svg' }));
export const CONFIG = schemes.map((scheme) => ({ scheme, pattern: `**/${CONFIG_NAME}` }));

export const isSvg = (document: vscode.TextDocument): boolean => vscode.languages.match(SVG, document) > 0;
const isConfig = (document: vscode.TextDocument): boolean => vscode.languages.match(CONFIG, document) > 0;

/**
 * Whether a document could be a stencil: it has one of our attributes, or a `tombolo.json` beside or above it. The
 * server looks closer; this only decides whether it is started.
 */
export async function mayBeStencil(document: vscode.TextDocument): Promise<boolean> {
  if (isConfig(document)) return true;
  return isSvg(document) && (isMarked(document) || (await configAbove(document.uri)) !== undefined);
}

const MARK = 'data-tombolo-';

/** Whether the text holds one of our attributes, or looks as if it did. */
export const isMarked = (document: vscode.TextDocument): boolean => document.getText().includes(MARK);

/** The same of a file that is not open as text. */
export async function mayBeStencilFile(uri: vscode.Uri): Promise<boolean> {
  if ((await configAbove(uri)) !== undefined) return true;
  try {
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)).includes(MARK);
  } catch {
    // Gone, or not ours to read.
    return false;
  }
}

/** The `tombolo.json` that holds for a file. */
export async function configAbove(uri: vscode.Uri): Promise<vscode.Uri | undefined> {
  for (let folder = vscode.Uri.joinPath(uri, '..'); ; folder = vscode.Uri.joinPath(folder, '..')) {
    const config = vscode.Uri.joinPath(folder, CONFIG_NAME);
    if (await isThere(config)) return config;
    if (folder.path === '/' || folder.path === vscode.Uri.joinPath(folder, '..').path) return undefined;
  }
}

/** Whether a file says itself which program draws it. */
export async function saysWhoDraws(uri: vscode.Uri): Promise<boolean> {
  try {
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)).includes(FROM);
  } catch {
    // Gone, or not ours to read.
    return false;
  }
}

const FROM = 'data-tombolo-from';

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
