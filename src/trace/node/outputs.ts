/** Notes the files that a program writes elsewhere than under the root, where nobody would look for marks. */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { OUTPUTS_NOTE, type TraceSettings } from '../settings';

type Written = (...args: unknown[]) => unknown;

/** Functions by the argument that names what is written. */
const WRITERS: Readonly<Record<string, number>> = {
  writeFileSync: 0,
  writeFile: 0,
  appendFileSync: 0,
  appendFile: 0,
  createWriteStream: 0,
  openSync: 0,
  open: 0,
  renameSync: 1,
  rename: 1,
  copyFileSync: 1,
  copyFile: 1,
};

export function noteOutputs({ root, folder }: TraceSettings): void {
  const note = new OutputNote(root, path.join(folder, OUTPUTS_NOTE));
  for (const module of [fs, fs.promises] as unknown as Record<string, Written>[]) {
    for (const [name, argument] of Object.entries(WRITERS)) {
      const original = module[name];
      if (original) module[name] = watched(original, (args) => note.add(args[argument]));
    }
  }
  syncBuiltinESMExports();
}

/** The same function, its own properties included, that tells of each call first. */
function watched(original: Written, tell: (args: readonly unknown[]) => void): Written {
  const wrapped = function (this: unknown, ...args: unknown[]): unknown {
    tell(args);
    return Reflect.apply(original, this, args);
  };
  return Object.defineProperties(wrapped, Object.getOwnPropertyDescriptors(original)) as Written;
}

class OutputNote {
  private readonly noted = new Set<string>();
  private readonly append = fs.appendFileSync;
  private readonly under: string;
  private readonly file: string;

  constructor(root: string, file: string) {
    this.under = root.endsWith(path.sep) ? root : root + path.sep;
    this.file = file;
  }

  add(target: unknown): void {
    const given = target instanceof URL ? fileURLToPath(target) : target;
    if (typeof given !== 'string') return;
    const file = path.resolve(given);
    if (
      this.noted.has(file) ||
      file === this.file ||
      (file.startsWith(this.under) && !file.includes(`node_modules${path.sep}`))
    )
      return;
    this.noted.add(file);
    this.append(this.file, `${file}\n`);
  }
}
