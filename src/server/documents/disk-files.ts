/** Files that are not open in the editor, kept until they change where they are. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import { MAX_FILE_SIZE } from '../../text/file-size';
import type { Files } from '../host/platform';

interface Known {
  /** Changes when the file does. */
  readonly stamp: string | undefined;
  readonly document: TextDocument | undefined;
}

export class DiskFiles {
  private readonly known = new Map<string, Known>();
  private readonly files: Files;

  constructor(files: Files) {
    this.files = files;
  }

  /** @returns version 0 of the document; undefined where there is no file of text that can be read */
  read(uri: string): TextDocument | undefined {
    const stamp = this.files.stampOf(uri, MAX_FILE_SIZE);
    const known = this.known.get(uri);
    if (known && known.stamp === stamp) return known.document;
    const text = stamp === undefined ? undefined : this.files.textOf(uri)?.replace(/^\ufeff/, '');
    const document = text === undefined ? undefined : TextDocument.create(uri, 'xml', 0, text);
    this.known.set(uri, { stamp, document });
    return document;
  }

  /** Forgets all but these. */
  keepOnly(uris: ReadonlySet<string>): void {
    for (const uri of [...this.known.keys()]) if (!uris.has(uri)) this.known.delete(uri);
  }
}
