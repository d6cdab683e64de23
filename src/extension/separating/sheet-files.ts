/** Where sheets of a picture go, what stands there already, and how they are written: never over what was edited, unasked. */
import * as vscode from 'vscode';
import { parseConfig } from '../../config/read';
import { CONFIG_NAME, type SeparateSettings } from '../../config/types';
import { hashOfText } from '../../text/hash';

const { l10n, window, workspace } = vscode;

/** Projects that are looked at for the one that was made of a picture. */
const MOST_PROJECTS = 200;

/** The folder with the sheets that were made of a picture; where none were, one beside it that is named like it. */
export async function folderFor(picture: vscode.Uri): Promise<vscode.Uri> {
  const usual = vscode.Uri.joinPath(picture, '..', stemOf(picture));
  const found = await workspace.findFiles(`**/${CONFIG_NAME}`, '**/node_modules/**', MOST_PROJECTS);
  for (const config of [vscode.Uri.joinPath(usual, CONFIG_NAME), ...found]) {
    const folder = vscode.Uri.joinPath(config, '..');
    const stated = (await settingsAt(config))?.picture;
    if (stated !== undefined && vscode.Uri.joinPath(folder, stated).toString() === picture.toString()) return folder;
  }
  return usual;
}

/** How the sheets of a `tombolo.json` were made. What it says of checks is not read. */
async function settingsAt(config: vscode.Uri): Promise<SeparateSettings | undefined> {
  return parseConfig(await textAt(config), { ids: [], acceptable: [] }).config.separate;
}

export const drawingName = (picture: vscode.Uri): string => `${stemOf(picture)}.svg`;

function stemOf({ path }: vscode.Uri): string {
  return path.replace(/^.*\//, '').replace(/\.[^.]*$/, '');
}

/** A path from a folder to a file, with forward slashes; the file's own where they share nothing. */
export function relativePath(folder: vscode.Uri, file: vscode.Uri): string {
  if (folder.scheme !== file.scheme || folder.authority !== file.authority) return file.path;
  const [from, to] = [folder, file].map(({ path }) => path.split('/').filter((part) => part !== '')) as [
    string[],
    string[],
  ];
  let same = 0;
  while (same < from.length && same < to.length - 1 && from[same] === to[same]) same += 1;
  return [...from.slice(same).map(() => '..'), ...to.slice(same)].join('/');
}

/** The text of a file, that of the editor where it is open; empty where there is none. */
export async function textAt(uri: vscode.Uri): Promise<string> {
  const open = workspace.textDocuments.find((document) => document.uri.toString() === uri.toString());
  if (open) return open.getText();
  try {
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch {
    return '';
  }
}

export interface WrittenSheets {
  readonly folder: vscode.Uri;
  /** The drawing's name. */
  readonly file: string;
  readonly drawing: string;
  readonly config: string;
}

/**
 * Writes the drawing and its project. A drawing that somebody edited is asked about: the new one is put beside it and both
 * are compared, or it is written over.
 * @returns the drawing to be shown; undefined where nothing was written, or it was put beside
 */
export async function writeSheets({ folder, file, drawing, config }: WrittenSheets): Promise<vscode.Uri | undefined> {
  const target = vscode.Uri.joinPath(folder, file);
  const configUri = vscode.Uri.joinPath(folder, CONFIG_NAME);
  const before = (await settingsAt(configUri))?.files ?? {};
  if (await isEdited(target, before[file])) {
    const choice = await askAboutEdited(file);
    if (choice === undefined) return undefined;
    if (choice === 'beside') return void (await writeBeside(target, drawing));
  }
  await writeAll([
    [target, drawing],
    [configUri, config],
  ]);
  return target;
}

/**
 * Whether a file is no longer as it was written: on the disk, or in an editor that has not saved it.
 * @param written the stand-in for what was written; undefined where nothing is known of it
 */
async function isEdited(uri: vscode.Uri, written: string | undefined): Promise<boolean> {
  const bytes = await bytesAt(uri);
  if (bytes && hashOfText(new TextDecoder().decode(bytes)) !== written) return true;
  return workspace.textDocuments.some((document) => document.isDirty && document.uri.toString() === uri.toString());
}

async function askAboutEdited(file: string): Promise<'beside' | 'over' | undefined> {
  const [beside, over] = [l10n.t('Write Beside and Compare'), l10n.t('Overwrite')];
  const said = l10n.t(
    '{0} was edited since it was separated. What you changed stays as it is unless you overwrite it.',
    file,
  );
  const choice = await window.showWarningMessage(said, { modal: true }, beside, over);
  return choice === beside ? 'beside' : choice === over ? 'over' : undefined;
}

async function writeBeside(target: vscode.Uri, drawing: string): Promise<void> {
  const path = target.path.replace(/\.svg$/, '.new.svg');
  const beside = target.with({ path });
  await workspace.fs.writeFile(beside, new TextEncoder().encode(drawing));
  const title = l10n.t('{0}: edited and separated again', target.path.replace(/^.*\//, ''));
  await vscode.commands.executeCommand('vscode.diff', target, beside, title);
}

/** All of them or none: where one cannot be written, those before it are put back. */
async function writeAll(files: readonly (readonly [vscode.Uri, string])[]): Promise<void> {
  const before: (readonly [vscode.Uri, Uint8Array | undefined])[] = [];
  try {
    for (const [uri, text] of files) {
      const old = await bytesAt(uri);
      await workspace.fs.writeFile(uri, new TextEncoder().encode(text));
      before.push([uri, old]);
    }
  } catch (error) {
    for (const [uri, old] of before) await (old ? workspace.fs.writeFile(uri, old) : workspace.fs.delete(uri));
    throw error;
  }
}

async function bytesAt(uri: vscode.Uri): Promise<Uint8Array | undefined> {
  try {
    return await workspace.fs.readFile(uri);
  } catch {
    return undefined;
  }
}
