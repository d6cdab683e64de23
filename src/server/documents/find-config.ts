/** The `tombolo.json` that is in force for a document: the nearest in its folder or above. */
import { URI, Utils } from 'vscode-uri';
import { CONFIG_NAME } from '../../config/types';
import { MAX_CONFIG_SIZE } from '../../text/file-size';
import type { Files } from '../host/platform';

export interface FoundConfig {
  readonly uri: string;
  readonly text: string;
}

/**
 * @param unsaved the text of a file that is open in the editor, by its URI; it wins over the file itself
 * @returns undefined where there is none, or where the document lies in no folder
 */
export function findConfig(
  documentUri: string,
  unsaved: (uri: string) => string | undefined,
  files: Files,
): FoundConfig | undefined {
  const uri = URI.parse(documentUri);
  if (!uri.path.startsWith('/')) return undefined;
  for (let folder = Utils.dirname(uri); ; folder = Utils.dirname(folder)) {
    const candidate = Utils.joinPath(folder, CONFIG_NAME).toString();
    const text = unsaved(candidate) ?? readIfThere(candidate, files);
    if (text !== undefined) return { uri: candidate, text };
    if (folder.path === Utils.dirname(folder).path) return undefined;
  }
}

function readIfThere(uri: string, files: Files): string | undefined {
  return files.stampOf(uri, MAX_CONFIG_SIZE) === undefined ? undefined : files.textOf(uri);
}
