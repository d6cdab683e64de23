// What is bundled, from which entry, and how. `bundle.mjs` runs it; the tests that start the server use it too.
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, context } from 'esbuild';
import { innerNames } from './inner-names.mjs';
import { leftOut } from './left-out.mjs';
import { packedWasm } from './packed-wasm.mjs';
import { sharedEngine } from './shared-engine.mjs';
import { usedIcons } from './used-icons.mjs';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
export const dist = path.join(root, 'dist');

const node = { platform: 'node', format: 'cjs', target: 'node20', legalComments: 'none', plugins: [leftOut(root)] };

const library = { platform: 'browser', target: 'es2022', legalComments: 'none', plugins: [leftOut(root)] };

const bundles = {
  extension: { ...node, entry: 'src/extension/extension.ts', out: 'extension.cjs', external: ['vscode'] },
  'extension-web': {
    entry: 'src/extension/extension-web.ts',
    out: 'extension-web.cjs',
    platform: 'browser',
    format: 'cjs',
    target: 'es2022',
    legalComments: 'none',
    plugins: [leftOut(root)],
    external: ['vscode'],
  },
  'server-web': {
    entry: 'src/web/main.ts',
    out: 'server-web.js',
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    legalComments: 'none',
    plugins: [leftOut(root)],
  },
  server: { ...node, entry: 'src/server/main.ts', out: 'server.cjs' },
  worker: { ...node, entry: 'src/worker/node.ts', out: 'worker.cjs' },
  cli: {
    ...node,
    entry: 'src/cli/main.ts',
    out: 'cli.cjs',
    external: ['@resvg/resvg-js'],
    banner: { js: '#!/usr/bin/env node' },
    // The decoder of JPEG pictures, which asks where it stands though it is given its code.
    plugins: [leftOut(root), packedWasm],
    defines: { 'import.meta.url': '"file:///"' },
  },
  separator: {
    ...node,
    entry: 'src/separator/thread/main.ts',
    out: 'separator.cjs',
    plugins: [leftOut(root), packedWasm],
    defines: { 'import.meta.url': '"file:///"' },
  },
  // What `tombolo trace` puts into the programs that it runs.
  'trace-preload': { ...node, entry: 'src/trace/node/preload.ts', out: 'trace/preload.cjs' },
  'trace-hooks': { ...node, entry: 'src/trace/node/hooks.ts', out: 'trace/hooks.cjs' },
  'trace-marker': { ...node, entry: 'src/trace/node/mark-source.ts', out: 'trace/marker.cjs' },
  preview: {
    entry: 'src/preview/main.ts',
    out: 'preview.js',
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    plugins: [textOfWorker('painter-code', 'src/preview/painter/worker.ts')],
  },
  separating: {
    entry: 'src/preview/separating/main.ts',
    out: 'separating.js',
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
  },
  'separating-style': {
    entry: 'src/preview/separating.css',
    out: 'separating.css',
    platform: 'browser',
    target: 'es2022',
    loader: { '.ttf': 'file' },
    assetNames: '[name]',
    plugins: [usedIcons(root)],
  },
  style: {
    entry: 'src/preview/bench.css',
    out: 'preview.css',
    platform: 'browser',
    target: 'es2022',
    // The font of the editor's own icons.
    loader: { '.ttf': 'file' },
    assetNames: '[name]',
    plugins: [usedIcons(root)],
  },
  // Programs that import the library get of these files what they use.
  library: {
    ...library,
    entry: 'src/library/*.ts',
    out: 'library',
    format: 'esm',
    splitting: true,
    outbase: 'src/library',
  },
};

/** Names of all bundles. */
export const names = Object.keys(bundles);

// The builds that these would be resolved to look for files beside themselves when they run.
const alias = {
  'jsonc-parser': 'jsonc-parser/lib/esm/main.js',
  tinyglobby: path.join(root, 'node_modules/tinyglobby/dist/index.cjs'),
  // The same in all programs, so that they can share what uses it.
  'fastest-levenshtein': 'fastest-levenshtein/esm/mod.js',
};

/**
 * Gives a worker's bundle as text under a name: a webview starts workers from text alone.
 * @param entry from the repository's root
 */
function textOfWorker(name, entry) {
  return {
    name,
    setup({ onResolve, onLoad, initialOptions }) {
      onResolve({ filter: new RegExp(`^${name}$`) }, () => ({ path: entry, namespace: name }));
      onLoad({ filter: /.*/, namespace: name }, async () => {
        const { outputFiles, metafile } = await build({
          entryPoints: [path.join(root, entry)],
          bundle: true,
          write: false,
          metafile: true,
          minify: true,
          platform: 'browser',
          format: 'iife',
          target: 'es2022',
          absWorkingDir: root,
          logLevel: initialOptions.logLevel,
          define,
        });
        const watchFiles = Object.keys(metafile.inputs).map((input) => path.join(root, input));
        return { contents: outputFiles[0].text, loader: 'text', watchFiles };
      });
    },
  };
}

/** What is true of everything that is shipped: no array is looked at twice, see src/base/defined.ts. */
export const define = { 'globalThis.tomboloAssertions': 'false', 'globalThis.tomboloBeforeServer': '[]' };

/** The programs of the library's package, which load the engine from the library. */
const SHARING = ['cli', 'server', 'worker'];

/**
 * @param engine where the programs of the package share it: see src/build/shared-engine.mjs
 * @param given more of these options: `plugins` come before others, and `in` before the entry
 */
function options(name, { outdir = dist, minify = false, engine, given = {} } = {}) {
  const { entry, out, defines = {}, plugins = [], ...rest } = { ...bundles[name], ...given.bundle };
  const gives = engine && name === 'library';
  const more = [...(gives ? [engine.gives] : []), ...(engine && SHARING.includes(name) ? [engine.loads] : [])];
  return {
    ...rest,
    plugins: [...(given.plugins ?? []), ...plugins, ...more],
    entryPoints: [
      entry.includes('/') ? path.join(root, entry) : entry,
      ...(gives ? [{ in: 'shared', out: 'shared' }] : []),
    ],
    ...(rest.splitting ? { outdir: path.join(outdir, out) } : { outfile: path.join(outdir, out) }),
    bundle: true,
    minify,
    // With the blanks, notes would go that say of calls that they do nothing else: bundlers of programs heed those.
    ...(minify &&
      rest.splitting && {
        minify: false,
        minifyIdentifiers: true,
        minifySyntax: true,
        mangleProps: innerNames(root),
      }),
    sourcemap: !minify,
    logLevel: 'warning',
    absWorkingDir: root,
    alias,
    define: { ...define, ...defines, ...given.defines },
  };
}

/** Bundles one entry without writing it; gives the files as path and contents, the paths of what is in them, and esbuild's graph. */
export async function bundleInMemory(name, settings) {
  const { outputFiles, metafile } = await build({ ...options(name, settings), write: false, metafile: true });
  const files = outputFiles.map((file) => ({ path: file.path, contents: withoutBareImports(file) }));
  // What is taken from another file is told with that.
  const inputs = Object.keys(metafile.inputs).filter((input) => !input.startsWith('shared:'));
  return { files, inputs, graph: metafile };
}

/**
 * Of files that share code, esbuild has each import all that it leads to. Whoever bundles them is then warned that the manifest
 * says of those imports that they do nothing: nor do they.
 */
function withoutBareImports({ path: file, contents, text }) {
  return /\.js$/.test(file) && text.includes('./chunk-')
    ? text.replace(/\bimport ?"\.\/chunk-\w+\.js";\n?/g, '')
    : contents;
}

/**
 * Bundles entries without writing them.
 * @param settings `shared`: as for the library's package, which has the engine once
 */
export async function bundleAll(chosen, { shared = false, ...settings } = {}) {
  if (!shared) return Promise.all(chosen.map((name) => bundleInMemory(name, settings)));
  const engine = sharedEngine(root);
  const others = chosen.filter((name) => name !== 'library');
  const made = await Promise.all(others.map((name) => bundleInMemory(name, { ...settings, engine })));
  return [...made, await bundleInMemory('library', { ...settings, engine })];
}

/** Bundles one entry; gives the path of the file written, of several that of the one that is imported. */
export async function bundle(name, settings) {
  writeFiles((await bundleInMemory(name, settings)).files);
  const { outfile, outdir = '' } = options(name, settings);
  return outfile ?? path.join(outdir, 'index.js');
}

/** Writes files given as path and contents; the command line's is made executable. */
export function writeFiles(files) {
  for (const file of files) {
    mkdirSync(path.dirname(file.path), { recursive: true });
    writeFileSync(file.path, file.contents);
    if (file.path.endsWith('cli.cjs')) chmodSync(file.path, 0o755);
  }
}

/** Keeps all bundles up to date until the process ends. */
export async function watch(settings) {
  const contexts = await Promise.all(names.map((name) => context({ ...options(name, settings), logLevel: 'info' })));
  // All are there before the first says that it watches: an editor that waits for that line may start at once. What
  // cannot be bundled has been said, and is tried again after the next change.
  await Promise.allSettled(contexts.map((each) => each.rebuild()));
  for (const each of contexts) await each.watch();
}

/** Bundles a module of the build and loads it. */
export async function runBundled(entry) {
  const { outputFiles } = await build({
    entryPoints: [path.join(root, entry)],
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    absWorkingDir: root,
    logLevel: 'warning',
    alias,
  });
  const code = Buffer.from(outputFiles[0].contents).toString('base64');
  return import(`data:text/javascript;base64,${code}`);
}

/** The schema of `tombolo.json`, of which the checks' own words are a part, as path and contents. */
export async function makeSchema({ minify = false } = {}) {
  const { schemaText } = await runBundled('src/build/check-docs.ts');
  const text = schemaText();
  return { path: path.join(dist, 'tombolo.schema.json'), contents: minify ? JSON.stringify(JSON.parse(text)) : text };
}

/** Copies the page of each check, its links and pictures as they lie from there, and that of `tombolo.json`. */
export function copyPages() {
  const pages = path.join(dist, 'checks');
  mkdirSync(pages, { recursive: true });
  const checks = path.join(root, 'src/checks');
  for (const entry of readdirSync(checks, { withFileTypes: true })) {
    const page = path.join(checks, entry.name, 'README.md');
    if (!entry.isDirectory() || !existsSync(page)) continue;
    const text = readFileSync(page, 'utf8')
      .replace(/\]\(\.\.\/([\w-]+)\/README\.md\)/g, ']($1.md)')
      .replaceAll('](../../../media/', '](../../media/');
    writeFileSync(path.join(pages, `${entry.name}.md`), text);
  }
  copyFileSync(path.join(root, 'src/config/README.md'), path.join(pages, 'unreadable-config.md'));
}

/** Copies what `tombolo trace` puts into programs in Python, which is not bundled. */
export function copyPython(outdir = dist) {
  const folder = path.join(outdir, 'trace/python');
  mkdirSync(folder, { recursive: true });
  const sources = path.join(root, 'src/trace/python');
  for (const name of readdirSync(sources).filter((each) => each.endsWith('.py'))) {
    copyFileSync(path.join(sources, name), path.join(folder, name));
  }
}

/** Programs of the older kind of modules load the newer kind, which Node.js can from 20.19 on. */
export function writeRequired(outdir = dist) {
  writeFiles([{ path: path.join(outdir, 'library/index.cjs'), contents: "module.exports = require('./index.js');\n" }]);
}

/** Makes what `tombolo trace` puts into programs. */
export async function bundlePreloads(settings) {
  await Promise.all(names.filter((name) => name.startsWith('trace-')).map((name) => bundle(name, settings)));
  copyPython(settings?.outdir);
}

/** Makes the command line with all that it runs beside it; gives its path. */
export async function bundleCommandLine(settings) {
  const [file] = await Promise.all([bundle('cli', settings), bundlePreloads(settings)]);
  return file;
}

/** Removes what earlier builds left. */
export function clean() {
  rmSync(dist, { recursive: true, force: true });
}
