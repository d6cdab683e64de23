/** The folders that the editor has open: beside its own folder, a project may name files in these alone. */
import { realpathSync } from 'node:fs';
import path from 'node:path';
import type { InitializeParams } from 'vscode-languageserver';
import { URI } from 'vscode-uri';
import type { OpenFolders } from '../host/platform';

export class Workspace implements OpenFolders {
  private folders: readonly string[] = [];

  /** @param params what the editor says when it begins */
  open({ workspaceFolders, rootUri }: Pick<InitializeParams, 'workspaceFolders' | 'rootUri'>): void {
    this.folders = (workspaceFolders?.map(({ uri }) => uri) ?? (rootUri ? [rootUri] : [])).map(pathOf);
  }

  /** The folders that were opened and closed since. */
  change(added: readonly string[], removed: readonly string[]): void {
    const gone = new Set(removed.map(pathOf));
    this.folders = [...this.folders.filter((folder) => !gone.has(folder)), ...added.map(pathOf)];
  }

  /** The folders round a folder, up to the one that is open, the nearest first; none where it lies in none. */
  foldersRound(folder: string): string[] {
    const open = this.folders.find((each) => isWithin(folder, each));
    const round: string[] = [];
    for (let each = folder; open !== undefined && each !== open && path.dirname(each) !== each; ) {
      each = path.dirname(each);
      round.push(each);
    }
    return round;
  }

  /**
   * Whether a file lies in the workspace or in the folder of its project, links followed.
   * @param config the address of the project's `tombolo.json`
   */
  holds(uri: string, config: string): boolean {
    const target = realPath(pathOf(uri));
    const roots = [path.dirname(pathOf(config)), ...this.folders].map(realPath);
    return target !== undefined && roots.some((root) => root !== undefined && isWithin(target, root));
  }
}

const pathOf = (uri: string): string => URI.parse(uri).fsPath;

function realPath(file: string): string | undefined {
  try {
    return realpathSync(file);
  } catch {
    return undefined;
  }
}

function isWithin(target: string, root: string): boolean {
  const way = path.relative(root, target);
  return way !== '..' && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way);
}
