/** Tells which of the files that matter have changed. */
import { basename, extname } from 'node:path';
import { watch } from 'chokidar';
import { CONFIG_NAME } from '../../config/types';

/** Sources of programs, and data that they commonly read. */
const SOURCES = /^\.(?:[cm]?[jt]sx?|py|json|csv|txt|toml|ya?ml)$/;

export interface WatchWish {
  /** Whether a program draws, whose files matter then too. */
  readonly byProgram: boolean;
  readonly changed: (file: string) => void;
}

/** @returns ends the watch */
export function watchFiles(paths: readonly string[], { byProgram, changed }: WatchWish): () => Promise<void> {
  const watcher = watch([...paths], {
    ignoreInitial: true,
    ignored: (path) => /(?:^|[\\/])(?:node_modules|\.[^\\/.][^\\/]*|__pycache__)(?:[\\/]|$)/.test(path),
  });
  watcher.on('all', (_, file) => {
    const kind = extname(file).toLowerCase();
    const matters = kind === '.svg' || basename(file) === CONFIG_NAME || (byProgram && SOURCES.test(kind));
    if (matters) changed(file);
  });
  return () => watcher.close();
}
