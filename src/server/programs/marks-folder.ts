/** What watched programs have left: one file each in a folder of the editor's own, read again whenever one is written. */
import { type FSWatcher, readdirSync, readFileSync, watch } from 'node:fs';
import path from 'node:path';
import { URI } from 'vscode-uri';
import type { GeneratorMarks } from '../../engine/index';
import type { MarkedDrawing, ProgramMarks } from '../../protocol/programs';
import { hashOfText } from '../../text/hash';
import type { Marks } from '../host/platform';

/** Milliseconds: a file that is put in the place of another is told of several times. */
const SETTLING = 10;

export interface MarkedFile extends MarkedDrawing {
  /** The folder that places are relative to. */
  readonly root: string;
}

export class MarksFolder implements Marks {
  private readonly folder: string;
  private readonly changed: (uris: ReadonlySet<string>) => void;
  private readonly watcher: FSWatcher;
  private marked: ReadonlyMap<string, MarkedFile> = new Map();
  private waiting: NodeJS.Timeout | undefined;

  /**
   * @param changed is told of the drawings that were made anew, and of those that nobody draws any more
   * @throws the system's error where there is no such folder
   */
  constructor(folder: string, changed: (uris: ReadonlySet<string>) => void) {
    this.folder = folder;
    this.changed = changed;
    this.watcher = watch(folder, () => this.lookSoon());
    this.watcher.on('error', () => this.watcher.close());
    this.lookSoon();
  }

  of(uri: string): MarkedFile | undefined {
    return this.marked.get(uri);
  }

  /** @returns undefined where they are those of another text */
  marksOf(uri: string, text: string): GeneratorMarks | undefined {
    const known = this.marked.get(uri);
    return known?.marks && known.hash === hashOfText(text) ? known.marks : undefined;
  }

  dispose(): void {
    clearTimeout(this.waiting);
    this.watcher.close();
  }

  private lookSoon(): void {
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => this.look(), SETTLING);
  }

  private look(): void {
    const now = new Map<string, MarkedFile>();
    for (const { root, drawings } of marksIn(this.folder)) {
      for (const drawing of drawings) {
        const uri = URI.file(path.resolve(root, drawing.file)).toString();
        const [read, before] = [{ ...drawing, root }, this.marked.get(uri)];
        now.set(uri, before && isSame(before, read) ? before : read);
      }
    }
    const before = this.marked;
    this.marked = now;
    const all = [...new Set([...before.keys(), ...now.keys()])];
    const others = all.filter((uri) => before.get(uri) !== now.get(uri));
    if (others.length > 0) this.changed(new Set(others));
  }
}

function isSame(a: MarkedFile, b: MarkedFile): boolean {
  return a.hash === b.hash && a.root === b.root && JSON.stringify(a.marks) === JSON.stringify(b.marks);
}

function marksIn(folder: string): ProgramMarks[] {
  try {
    const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
    return names.flatMap((name) => readMarks(path.join(folder, name)) ?? []);
  } catch {
    // The folder is gone: nobody draws any more.
    return [];
  }
}

function readMarks(file: string): ProgramMarks | undefined {
  try {
    const read = JSON.parse(readFileSync(file, 'utf8')) as Partial<ProgramMarks> | null;
    return read?.version === 1 ? (read as ProgramMarks) : undefined;
  } catch {
    // Gone meanwhile, or of another version of ours.
    return undefined;
  }
}
