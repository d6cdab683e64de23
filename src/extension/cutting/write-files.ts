/** Writes several files into a folder, all of them or none, and none over a drawing of the artist's. */
import { FileSystemError, FileType, l10n, Uri, workspace } from 'vscode';
import { isCutFile } from '../../cut/own-file';
import { oneLine } from '../../text/plain-text';
import { randomHex } from '../nonce';

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** Bytes: a larger file is not looked into, and stays. */
const LARGEST = 100_000_000;
/** So many characters tell whose a file is. */
const HEAD = 512;

const { fs } = workspace;

/**
 * All files are written whole into a folder beside the others before the first one takes its place.
 * @returns undefined where all was written; else one line that says what was in the way, and nothing has changed
 */
export async function writeFiles(folder: Uri, files: readonly TextFile[]): Promise<string | undefined> {
  const staged = Uri.joinPath(folder, `.unfinished-${randomHex(4)}`);
  try {
    for (const { name } of files) {
      const refusal = await whyNotOver(Uri.joinPath(folder, name));
      if (refusal !== undefined) return refusal;
    }
    await fs.createDirectory(staged);
    for (const { name, text } of files) await fs.writeFile(Uri.joinPath(staged, name), new TextEncoder().encode(text));
    for (const { name } of files)
      await fs.rename(Uri.joinPath(staged, name), Uri.joinPath(folder, name), { overwrite: true });
    return undefined;
  } catch (error) {
    return oneLine(error instanceof Error ? error.message : String(error));
  } finally {
    await fs.delete(staged, { recursive: true }).then(undefined, () => undefined);
  }
}

/** A drawing of the artist's, a link that may lead to one, or a folder stays what it is. */
async function whyNotOver(file: Uri): Promise<string | undefined> {
  const name = oneLine(file.path.split('/').at(-1) ?? '');
  try {
    const { type, size } = await fs.stat(file);
    if ((type & FileType.SymbolicLink) !== 0) return l10n.t('{0} is a symbolic link, which is not followed.', name);
    if (type !== FileType.File) return l10n.t('{0} is in the way, and no file.', name);
    const start = size > LARGEST ? '' : new TextDecoder().decode((await fs.readFile(file)).slice(0, HEAD));
    return isCutFile(start)
      ? undefined
      : l10n.t('{0} is there, and was not written here. Choose another folder.', name);
  } catch (error) {
    if (error instanceof FileSystemError && error.code === 'FileNotFound') return undefined;
    throw error;
  }
}
