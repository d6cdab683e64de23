// The library's package has the engine once: the command, the language server and its worker load what they need of it from the
// library's modules, by way of one more of those. Without this each of them would carry all of it.
import path from 'node:path';
import { build } from 'esbuild';

/** Everything that is no part of the engine, and carried by who uses it. */
const OTHERS = ['build', 'cli', 'extension', 'preview', 'protocol', 'separator', 'server', 'site', 'trace', 'worker'];

/** Seen from `dist`, where the command lies. */
const SHARED = './library/shared.js';

/** What is shared, as collected from the programs that load it; it must be bundled after them. @param root the repository's */
export function sharedEngine(root) {
  const source = path.join(root, 'src');
  const shared = new Set();
  return {
    /** For the programs, which are all bundled by it. */
    loads: {
      name: 'loads-engine',
      setup({ onResolve, onLoad, resolve }) {
        onResolve({ filter: /^\.\.?\// }, async ({ path: target, importer, resolveDir, kind, pluginData }) => {
          if (pluginData === 'resolved' || !importer.startsWith(source)) return undefined;
          const found = await resolve(target, { importer, resolveDir, kind, pluginData: 'resolved' });
          const name = path.relative(source, found.path).replaceAll(path.sep, '/');
          if (!name.endsWith('.ts') || name.startsWith('../') || OTHERS.includes(name.split('/')[0])) return found;
          shared.add(name);
          return { path: name, namespace: 'shared-engine' };
        });
        onResolve({ filter: /\/library\/shared\.js$/ }, () => ({ path: SHARED, external: true }));
        onLoad({ filter: /.*/, namespace: 'shared-engine' }, ({ path: name }) => ({
          contents: `module.exports = require('${SHARED}').modules['${name}'];`,
        }));
      },
    },
    /** For the library: gives the entry `shared`. */
    gives: {
      name: 'gives-engine',
      setup({ onResolve, onLoad, initialOptions }) {
        onResolve({ filter: /^shared$/ }, () => ({ path: 'shared', namespace: 'shared-entry' }));
        onLoad({ filter: /.*/, namespace: 'shared-entry' }, async () => {
          const contents = entryFor(await namesIn([...shared].sort(), initialOptions));
          return { contents, resolveDir: source };
        });
      },
    },
  };
}

/** What each of the modules exports, by its name. */
async function namesIn(modules, { absWorkingDir, define, alias }) {
  const { metafile } = await build({
    entryPoints: modules.map((name) => path.join(absWorkingDir, 'src', name)),
    bundle: true,
    write: false,
    metafile: true,
    format: 'esm',
    outdir: 'out',
    packages: 'external',
    absWorkingDir,
    define,
    alias,
  });
  const made = Object.values(metafile.outputs).filter(({ entryPoint }) => entryPoint);
  return made.map(({ entryPoint, exports }) => [entryPoint.replace(/^src\//, ''), exports]);
}

/**
 * Each name by itself: of whole modules as objects, bundlers of programs could leave nothing out.
 * @param modules their names and what they export
 */
function entryFor(modules) {
  const local = (module, name) => `_${module}_${name}`;
  const imports = modules.map(([module, names], i) => {
    const list = names.map((name) => `${name} as ${local(i, name)}`).join(', ');
    return `import { ${list} } from './${module}';`;
  });
  const objects = modules.map(([module, names], i) => {
    const getters = names.map((name) => `get ${name}() { return ${local(i, name)}; }`).join(', ');
    return `  '${module}': { ${getters} },`;
  });
  return [...imports, 'export const modules = {', ...objects, '};'].join('\n');
}
