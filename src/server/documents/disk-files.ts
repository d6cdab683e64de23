/** Files that are not open in the editor, read from disk and kept until they change there. */
import { readFileSync, statSync } from 'node:fs';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import { MAX_FILE_SIZE } from '../../text/file-size';

interface Known {
  /** Changes when the file does. */
  readonly stamp: string;
  readonly document: TextDocument | undefined;
}

export class DiskFiles {
  private readonly known = new Map<string, Known>();

  /** @returns version 0 of the document; undefined where there is no file of text that can be read */
  read(uri: string): TextDocument | undefined {
    const { fsPath } = URI.parse(uri);
    const stamp = stampOf(fsPath);
    const known = this.known.get(uri);
    if (known?.stamp === stamp) return known.document;
    const text = stamp === NONE ? undefined : textOf(fsPath);
    const document = text === undefined ? undefined : TextDocument.create(uri, 'xml', 0, text);
    this.known.set(uri, { stamp, document });
    return document;
  }

  /** Forgets all but these. */
  keepOnly(uris: ReadonlySet<string>): void {
    for (const uri of [...this.known.keys()]) if (!uris.has(uri)) this.known.delete(uri);
  }
}

const NONE = '';

/** Nothing but plain files: what is no file may never come to an end. */
function stampOf(file: string): string {
  try {
    const stats = statSync(file);
    return stats.isFile() && stats.size <= MAX_FILE_SIZE ? `${stats.mtimeMs} ${stats.ctimeMs} ${stats.size}` : NONE;
  } catch {
    return NONE;
  }
}

function textOf(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8').replace(/^\ufeff/, '');
  } catch {
    // Gone meanwhile, or not ours to read: as good as none.
    return undefined;
  }
}
