// The extension's package holds once what several of its programs are made of: each group of programs has a file with the parts
// that two or more of them use, and loads them from there. A part is a module.
import path from 'node:path';

/**
 * What is bundled, as esbuild found it: its modules by name, each with what it imports.
 * @typedef {{ inputs: Record<string, { imports: { path: string, external?: boolean }[], format?: string }>,
 *   outputs: Record<string, { inputs: Record<string, { bytesInOutput: number }> }> }} Graph
 */

/**
 * A file that gives parts.
 * @typedef {{ file: string, names: readonly string[], asked: Set<string> }} Share
 *   `names`: of all modules that may be taken from it, `asked`: of those that are
 */

/**
 * The modules that at least two programs use, and that lead to the same modules in each: names in their order.
 * @param {Graph[]} graphs of the programs
 * @param {(name: string) => string} read gives the text of a module
 * @param {(uses: boolean[]) => boolean} counts by which programs, in the order of `graphs`, a module must be used
 */
export function sharedModules(graphs, read, counts = () => true) {
  const used = graphs.map(({ outputs }) => {
    const parts = Object.values(outputs).flatMap(({ inputs }) => Object.entries(inputs));
    return new Set(parts.filter(([, { bytesInOutput }]) => bytesInOutput > 0).map(([name]) => name));
  });
  const differs = new Set(graphs.flatMap(({ inputs }) => Object.keys(inputs)).filter((name) => !isAlike(graphs, name)));
  spread(graphs, differs);
  const candidates = [...new Set(used.flatMap((names) => [...names]))].sort();
  return candidates.filter((name) => {
    const uses = used.map((names) => names.has(name));
    return uses.filter(Boolean).length > 1 && !differs.has(name) && isWhole(name, graphs, read) && counts(uses);
  });
}

/** Whether a module of the newer kind is the same where it is required: its default export would be taken for one of the others. */
function isWhole(name, graphs, read) {
  const format = graphs.map(({ inputs }) => inputs[name]?.format).find(Boolean);
  if (format !== 'esm') return format === 'cjs';
  // What a plugin gives has no file.
  return !name.includes(':') && !/\bexport default\b|\bas default\b/.test(read(name));
}

/** Whether a module imports the same in all programs that it is in. */
function isAlike(graphs, name) {
  const lists = graphs.flatMap(({ inputs }) => (inputs[name] ? [JSON.stringify(inputs[name].imports)] : []));
  return new Set(lists).size === 1;
}

/** Adds to a set of modules all those that lead to one of it. */
function spread(graphs, found) {
  const leads = ({ imports }) => imports.some(({ path: target }) => found.has(target));
  for (let size = -1; size !== found.size; ) {
    size = found.size;
    for (const { inputs } of graphs) {
      for (const [name, module] of Object.entries(inputs)) if (leads(module)) found.add(name);
    }
  }
}

/**
 * A plugin of esbuild that takes modules from where they are shared.
 * @param {Share[]} shares
 */
export function takesShared(shares) {
  return {
    name: 'takes-shared',
    setup({ onResolve, onLoad, resolve, initialOptions }) {
      const root = initialOptions.absWorkingDir;
      for (const { file } of shares) {
        onResolve({ filter: new RegExp(`^\\./${file}$`) }, () => ({ path: `./${file}`, external: true }));
      }
      onResolve({ filter: /.*/ }, async (asked) => {
        if (asked.pluginData === 'resolved' || asked.kind === 'entry-point') return undefined;
        const { importer, resolveDir, kind, namespace } = asked;
        const found = await resolve(asked.path, { importer, resolveDir, kind, namespace, pluginData: 'resolved' });
        if (found.external || found.errors.length > 0) return found;
        // As esbuild names files in its graphs.
        const name = path.relative(root, found.path).replaceAll(path.sep, '/');
        const share = shares.find(({ names }) => names.includes(name));
        if (!share) return { ...found, pluginData: undefined };
        share.asked.add(name);
        return { path: name, namespace: 'shared', pluginData: share };
      });
      onLoad({ filter: /.*/, namespace: 'shared' }, ({ path: name, pluginData: { names, file } }) => ({
        contents: `module.exports = require('./${file}').parts[${names.indexOf(name)}];`,
        resolveDir: root,
      }));
    },
  };
}

/**
 * A plugin of esbuild for the file that gives parts, which is bundled after those that ask for them: its entry is named `parts`.
 * @param {Share} share
 * @param program one that is in the same file, an extension: then nothing runs before it is asked for. Else that goes for packages
 *   alone, for what keeps modules apart takes more room than they do.
 */
export function givesShared({ names, asked }, program) {
  return {
    name: 'gives-shared',
    setup({ onResolve, onLoad, initialOptions }) {
      onResolve({ filter: /^parts$/ }, () => ({ path: 'parts', namespace: 'parts-entry' }));
      onLoad({ filter: /.*/, namespace: 'parts-entry' }, () => {
        const parts = [...asked].map((name) => ({ name, at: names.indexOf(name) })).sort((a, b) => a.at - b.at);
        const contents = program ? entryWith(program, parts) : entryOf(parts);
        return { contents, resolveDir: initialOptions.absWorkingDir };
      });
    },
  };
}

const whenAsked = ({ name, at }) => `get ${at}() { return require('./${name}'); },`;

function entryWith(program, parts) {
  const own = `exports.activate = (context) => require('./${program}').activate(context);`;
  return [own, 'exports.parts = {', ...parts.map(whenAsked), '};'].join('\n');
}

function entryOf(parts) {
  const isOwn = ({ name }) => name.startsWith('src/');
  const imports = parts.filter(isOwn).map(({ name, at }) => `import * as part${at} from './${name}';`);
  const given = parts.map((part) => (isOwn(part) ? `${part.at}: part${part.at},` : whenAsked(part)));
  return [...imports, 'export const parts = {', ...given, '};'].join('\n');
}
