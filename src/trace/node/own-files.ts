/** Which files of a traced program are its user's own. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the preloads themselves. */
const HERE = `${__dirname}${path.sep}`;
const PACKAGES = `${path.sep}node_modules${path.sep}`;

/** A file's path, from a path or a `file:` URL; undefined for what is none. */
export function pathOf(name: string): string | undefined {
  if (name.startsWith('file:')) return fileURLToPath(name.replace(/[?#].*$/s, ''));
  return path.isAbsolute(name) ? name : undefined;
}

export function isOwn(file: string): boolean {
  return !file.includes(PACKAGES) && !file.startsWith(HERE);
}
