/** Files that the server asks the editor for: plain ones of the workspace, and none of boundless size. */
import * as vscode from 'vscode';
import type { SentFile } from '../../protocol/files';
import { MAX_FILE_SIZE } from '../../text/file-size';

export function readWanted(uris: readonly string[]): Promise<SentFile[]> {
  return Promise.all(uris.map(async (uri) => ({ uri, text: await textOf(vscode.Uri.parse(uri)) })));
}

/** Null where there is none that may be read. */
async function textOf(uri: vscode.Uri): Promise<string | null> {
  if (!vscode.workspace.getWorkspaceFolder(uri)) return null;
  try {
    const { type, size } = await vscode.workspace.fs.stat(uri);
    if (type !== vscode.FileType.File || size > MAX_FILE_SIZE) return null;
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  } catch {
    // Missing, or not ours to read: as good as none.
    return null;
  }
}
