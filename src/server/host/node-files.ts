/** Files on disk, as Node.js reads them. */
import { readFileSync, statSync } from 'node:fs';
import { URI } from 'vscode-uri';
import type { Files } from './platform';

export const NODE_FILES: Files = {
  stampOf(uri, limit) {
    const file = pathOf(uri);
    try {
      const stats = file === undefined ? undefined : statSync(file);
      // What is no plain file may never come to an end.
      return stats?.isFile() && stats.size <= limit ? `${stats.mtimeMs} ${stats.ctimeMs} ${stats.size}` : undefined;
    } catch {
      // Missing, or not ours to read: as good as none.
      return undefined;
    }
  },
  textOf(uri) {
    const file = pathOf(uri);
    try {
      return file === undefined ? undefined : readFileSync(file, 'utf8');
    } catch {
      // Gone meanwhile.
      return undefined;
    }
  },
};

function pathOf(address: string): string | undefined {
  const uri = URI.parse(address);
  return uri.scheme === 'file' ? uri.fsPath : undefined;
}
