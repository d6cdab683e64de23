/** What the server stands on: the same server runs as a process of Node.js and as a worker in a browser. */
import type { InitializeParams, Range } from 'vscode-languageserver';
import type { GeneratorMarks, GeneratorPlace } from '../../engine/index';
import type { StartEngine } from '../engine/engine-client';

/** The address of a check's page, where there is one. */
export type PageOf = (check: string) => string | undefined;

export interface Platform {
  readonly startEngine: StartEngine;
  readonly pageOf: PageOf;
  readonly files: Files;
  readonly workspace: OpenFolders;
  readonly programFiles: ProgramFiles;
  /** Follows what watched programs leave in a folder; not there where no program can run. */
  readonly watchMarks?: WatchMarks;
}

/** Files that are not open in the editor, by their addresses. */
export interface Files {
  /**
   * @param limit bytes
   * @returns another one when the file is another; undefined where there is no plain file of that size that can be read
   */
  stampOf(uri: string, limit: number): string | undefined;
  textOf(uri: string): string | undefined;
  /** The editor tells of a change; without it, each question looks at the file itself. */
  changed?(uri: string): void;
  /** @param told is told of files that are others than before, where that shows later only */
  follow?(told: (uri: string) => void): void;
}

/** The folders that the editor has open. */
export interface OpenFolders {
  open(params: Pick<InitializeParams, 'workspaceFolders' | 'rootUri'>): void;
  change(added: readonly string[], removed: readonly string[]): void;
  /** Whether a file lies in one of them or in the folder of its project. */
  holds(uri: string, config: string): boolean;
}

/** Programs that draw, as files. */
export interface ProgramFiles {
  uriOf(name: string, drawing: string, root: string | undefined): string | undefined;
  rangeOf(uri: string, place: GeneratorPlace): Range;
}

export type WatchMarks = (folder: string, changed: (uris: ReadonlySet<string>) => void) => Marks;

/** What watched programs have left. */
export interface Marks {
  /** @returns the folder that places are relative to; undefined for what no watched program drew */
  of(uri: string): { readonly root: string } | undefined;
  marksOf(uri: string, text: string): GeneratorMarks | undefined;
  dispose(): void;
}
