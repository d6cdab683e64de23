/** Programs bundled from the sources: made once for all test files that a process runs, written where each wants them. */
import path from 'node:path';
import { bundleInMemory, copyPython, names, writeFiles } from '../src/build/bundles.mjs';

interface Place {
  readonly outdir: string;
  readonly minify: boolean;
}

/** By name and whether it is minified. Their paths lead from the folder that they are written into. */
const made = new Map<string, Promise<Awaited<ReturnType<typeof bundleInMemory>>['files']>>();

async function make(name: string, minify: boolean) {
  const outdir = '/bundles';
  const { files } = await bundleInMemory(name, { outdir, minify });
  return files.map((file) => ({ ...file, path: path.relative(outdir, file.path) }));
}

export async function writeBundles(chosen: readonly string[], { outdir, minify }: Place): Promise<void> {
  const all = chosen.map((name) => {
    const key = `${name} ${minify}`;
    const files = made.get(key) ?? make(name, minify);
    made.set(key, files);
    return files;
  });
  const files = (await Promise.all(all)).flat();
  writeFiles(files.map((file) => ({ ...file, path: path.join(outdir, file.path) })));
}

/** What `tombolo trace` puts into programs. */
export async function writePreloads(place: Place): Promise<void> {
  await writeBundles(
    names.filter((name) => name.startsWith('trace-')),
    place,
  );
  copyPython(place.outdir);
}
