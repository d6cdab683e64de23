// The library and the command as a package of their own, without the extension. `npm pack` and `npm publish` take the
// repository's root, whose package.json is the extension's manifest: so before they pack, the library's own manifest and README are
// put in its place, and taken away again when they are done.
//   node src/build/library.mjs begin | end
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { rollup } from 'rollup';
import { dts } from 'rollup-plugin-dts';
import { dist, root } from './bundles.mjs';

/** The root's files, as they are while nothing is packed. */
const kept = path.join(root, '.cache/while-packing');

const at = (name) => path.join(root, name);
const read = (file) => JSON.parse(readFileSync(file, 'utf8'));

/** Everything a package of npm says, and nothing that an editor reads. @param manifest of the root */
export function libraryManifest(manifest) {
  const { name, version, license, type, keywords, engines, bin, exports, sideEffects, optionalDependencies } = manifest;
  const { homepage, repository, bugs, author } = manifest;
  const { description } = read(at('package.nls.json'));
  const said = Object.entries({ homepage, repository, bugs, author }).filter(([, value]) => value);
  return {
    name,
    version,
    description,
    keywords,
    ...Object.fromEntries(said),
    license,
    type,
    engines: { node: engines.node },
    // For resolvers that do not know `exports`.
    main: exports['.'].require.default,
    types: exports['.'].require.types,
    exports,
    bin,
    sideEffects,
    files: [
      'dist/library',
      'dist/cli.cjs',
      'dist/server.cjs',
      'dist/worker.cjs',
      'dist/trace',
      'dist/checks',
      'dist/tombolo.schema.json',
      'dist/THIRD-PARTY-NOTICES.txt',
      'CHANGELOG.md',
    ],
    optionalDependencies,
  };
}

/** What stands in the root while it is packed, by name. */
function standIns() {
  return {
    'package.json': `${JSON.stringify(libraryManifest(read(at('package.json'))), null, 2)}\n`,
    'README.md': readFileSync(at('src/library/README.md'), 'utf8'),
  };
}

/** Puts the library's files into the root. */
export function begin() {
  // A packing that was broken off has left them.
  end();
  const files = standIns();
  mkdirSync(kept, { recursive: true });
  for (const [name, text] of Object.entries(files)) {
    renameSync(at(name), path.join(kept, name));
    writeFileSync(at(name), text);
  }
}

/** Puts the root's own files back. */
export function end() {
  for (const name of ['package.json', 'README.md']) {
    if (existsSync(path.join(kept, name))) renameSync(path.join(kept, name), at(name));
  }
}

/** The declarations in one file for each of the two kinds of modules, with nothing imported: path and contents. */
export async function declarations() {
  const problems = [];
  const bundle = await rollup({
    input: path.join(root, 'src/library/index.ts'),
    plugins: [dts({ tsconfig: path.join(root, 'src/tsconfig.json'), compilerOptions: DECLARATIONS })],
    onwarn: ({ message }) => problems.push(message),
  });
  const { output } = await bundle.generate({ format: 'es' });
  await bundle.close();
  const [{ code, imports }] = output;
  if (problems.length > 0 || imports.length > 0) throw new Error([...problems, ...imports].join('\n'));
  return ['index.d.ts', 'index.d.cts'].map((name) => ({ path: path.join(dist, 'library', name), contents: code }));
}

/** Only what the entry leads to is shipped, not the whole part. */
const DECLARATIONS = { composite: false, incremental: false, emitDeclarationOnly: false, stripInternal: true };

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , step] = process.argv;
  if (step === 'begin') begin();
  else end();
}
