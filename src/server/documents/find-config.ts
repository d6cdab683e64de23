/** The `tombolo.json` that is in force for a document: the nearest in its folder or above. */
import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { URI } from 'vscode-uri';
import { CONFIG_NAME } from '../../config/types';
import { MAX_CONFIG_SIZE } from '../../text/file-size';

export interface FoundConfig {
  readonly uri: string;
  readonly text: string;
}

/**
 * @param unsaved the text of a file that is open in the editor, by its URI; it wins over the file on disk
 * @returns undefined where there is none, or where the document is not on disk
 */
export function findConfig(documentUri: string, unsaved: (uri: string) => string | undefined): FoundConfig | undefined {
  const uri = URI.parse(documentUri);
  if (uri.scheme !== 'file') return undefined;
  for (let folder = path.dirname(uri.fsPath); ; folder = path.dirname(folder)) {
    const file = path.join(folder, CONFIG_NAME);
    const candidate = URI.file(file).toString();
    const text = unsaved(candidate) ?? readIfThere(file);
    if (text !== undefined) return { uri: candidate, text };
    if (folder === path.dirname(folder)) return undefined;
  }
}

function readIfThere(file: string): string | undefined {
  try {
    const stats = statSync(file);
    // What is no plain file may never come to an end.
    return stats.isFile() && stats.size <= MAX_CONFIG_SIZE ? readFileSync(file, 'utf8') : undefined;
  } catch {
    // Missing, or not ours to read: as good as none.
    return undefined;
  }
}
