/** The `tombolo.json` that is in force for a document: the nearest in its folder or above. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { URI } from 'vscode-uri';
import { CONFIG_NAME } from '../../config/types';

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
    return readFileSync(file, 'utf8');
  } catch {
    // Missing, a folder, or not ours to read: as good as none.
    return undefined;
  }
}
