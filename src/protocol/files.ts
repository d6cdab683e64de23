/** Files that a server without a disk has the editor read. */

/** The name of the worker that runs the engine; that of the server is the address of the text of both. */
export const ENGINE_NAME = 'tombolo-engine';

/** The server asks for files, by their addresses: each once, and again when it was told of a change. */
export const WANTED_FILES = 'tombolo/wantedFiles';

export interface WantedFiles {
  readonly uris: readonly string[];
}

/** The editor gives them. */
export const SENT_FILES = 'tombolo/files';

export interface SentFilesParams {
  readonly files: readonly SentFile[];
}

export interface SentFile {
  readonly uri: string;
  /** Null where there is no plain file, or one that is too long, or that is none of the workspace. */
  readonly text: string | null;
}
