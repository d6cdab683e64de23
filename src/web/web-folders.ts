/** The folders that an editor in a browser has open: addresses of any kind, without links. */
import type { InitializeParams } from 'vscode-languageserver';
import { URI, Utils } from 'vscode-uri';
import type { OpenFolders } from '../server/host/platform';

export class WebFolders implements OpenFolders {
  private folders: readonly string[] = [];

  open({ workspaceFolders, rootUri }: Pick<InitializeParams, 'workspaceFolders' | 'rootUri'>): void {
    this.folders = (workspaceFolders?.map(({ uri }) => uri) ?? (rootUri ? [rootUri] : [])).map(asFolder);
  }

  change(added: readonly string[], removed: readonly string[]): void {
    const gone = new Set(removed.map(asFolder));
    this.folders = [...this.folders.filter((folder) => !gone.has(folder)), ...added.map(asFolder)];
  }

  holds(uri: string, config: string): boolean {
    const file = Utils.resolvePath(URI.parse(uri), '.').toString();
    const project = asFolder(Utils.dirname(URI.parse(config)).toString());
    return [project, ...this.folders].some((folder) => file.startsWith(folder));
  }
}

/** Ends with a slash, so that no folder is taken for one whose name goes on. */
function asFolder(uri: string): string {
  return `${URI.parse(uri).toString().replace(/\/+$/, '')}/`;
}
