/** What the checker of documents stands among: its way out, the folders that are open, and programs that draw. */
import type { Diagnostic } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { FindingId, GeneratorMarks } from '../../engine/index';
import type { Checked } from '../../protocol/index';
import type { Files, OpenFolders } from '../host/platform';
import type { KnownDocument } from './known-document';

/** The way out of the checker. */
export interface CheckerOutput {
  diagnostics(uri: string, version: number | undefined, diagnostics: Diagnostic[]): void;
  checked(checked: Checked): void;
  log(message: string): void;
  /** The address of a check's page. */
  pageOf(check: string): string | undefined;
}

/** Programs that draw, as far as checks are concerned. */
export interface DrawnFiles {
  /** Whether a watched program wrote it last: it says so when it is done. */
  isMarked(uri: string): boolean;
  /** Whether a program is known that draws it. */
  isDrawn(uri: string): boolean;
  /** What it left of a text. */
  marksOf(uri: string, text: string): GeneratorMarks | undefined;
  /** @returns the findings that are told at a program's lines */
  show(known: KnownDocument): ReadonlySet<FindingId>;
  drop(uri: string): void;
  dispose(): void;
}

/** What lies round the documents. */
export interface CheckerSurroundings {
  readonly files: Files;
  readonly workspace: OpenFolders;
  /** Without it, no program draws. */
  readonly programs?: DrawnFiles;
}

export const NO_PROGRAMS: DrawnFiles = {
  isMarked: () => false,
  isDrawn: () => false,
  marksOf: () => undefined,
  show: () => new Set(),
  drop: () => undefined,
  dispose: () => undefined,
};

/** The open documents. */
export interface OpenDocuments {
  get(uri: string): TextDocument | undefined;
  all(): TextDocument[];
}
