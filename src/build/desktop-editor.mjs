import { accessSync, constants } from 'node:fs';
import path from 'node:path';

/** The desktop VS Code: what TOMBOLO_VSCODE says, else `code` on the PATH; undefined where there is none. */
export function findDesktopEditor() {
  if (process.env.TOMBOLO_VSCODE) return process.env.TOMBOLO_VSCODE;
  const names = process.platform === 'win32' ? ['code.cmd', 'code.exe'] : ['code'];
  return (process.env.PATH ?? '')
    .split(path.delimiter)
    .flatMap((folder) => names.map((name) => path.join(folder, name)))
    .find(isExecutable);
}

function isExecutable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
