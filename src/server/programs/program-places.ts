/** From the names that a drawing has for places of programs to the files, and how far such a place reaches. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Range } from 'vscode-languageserver';
import { URI } from 'vscode-uri';
import type { GeneratorPlace } from '../../engine/index';
import { reachOfPlace } from '../../report/generator';
import type { DiskFiles } from '../documents/disk-files';
import type { Workspace } from '../documents/workspace';
import type { ProgramFiles } from '../host/platform';

export class ProgramPlaces implements ProgramFiles {
  private readonly workspace: Workspace;
  private readonly disk: DiskFiles;

  constructor(workspace: Workspace, disk: DiskFiles) {
    this.workspace = workspace;
    this.disk = disk;
  }

  /**
   * The address of a program's file.
   * @param drawing the address of what names it
   * @param root the folder that the program was watched in; without one it is looked for in the drawing's folder and
   * those round it, within the workspace
   */
  uriOf(name: string, drawing: string, root: string | undefined): string | undefined {
    if (root !== undefined) return URI.file(path.resolve(root, name)).toString();
    const folder = path.dirname(URI.parse(drawing).fsPath);
    const folders = [folder, ...this.workspace.foldersRound(folder)];
    const candidates = folders.map((each) => path.resolve(each, name));
    // A drawing may name any place: none but those in the workspace are looked at.
    const near = candidates.filter((file) => folders.some((each) => isBelow(file, each)));
    const found = near.find((file) => existsSync(file));
    return found === undefined ? undefined : URI.file(found).toString();
  }

  /** The start tag or the name that stands at a place, as the file is on disk. */
  rangeOf(uri: string, { range: { start } }: GeneratorPlace): Range {
    const end = { line: start.line + 1, character: 0 };
    const rest = this.disk.read(uri)?.getText({ start, end }) ?? '';
    return { start, end: { line: start.line, character: start.character + reachOfPlace(rest) } };
  }
}

function isBelow(file: string, folder: string): boolean {
  const way = path.relative(folder, file);
  return way !== '..' && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way);
}
