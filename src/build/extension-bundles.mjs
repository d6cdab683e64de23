// What is bundled for the extension's package, where programs share what they have in common: see src/build/shared-parts.mjs.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { bundleInMemory, names, root } from './bundles.mjs';
import { givesShared, sharedModules, takesShared } from './shared-parts.mjs';

/** Of the server in a browser and of programs with Node.js. */
const ENGINE = 'engine.cjs';

/** Of the server, be it in a browser or a process. */
const SERVER_PARTS = 'server-parts.cjs';

/** Of programs with Node.js alone: pictures, and what is asked of files. */
const NODE_PARTS = 'node-parts.cjs';

/** An editor in a browser takes the extension from one file. It gives parts to the other entry, and the protocol to the servers. */
const WEB_ENTRY = 'extension-web.cjs';

const SERVERS = ['server-web', 'server'];
const PROGRAMS = ['worker', 'cli', 'separator'];
const ENTRIES = ['extension-web', 'extension'];
const SHARING = [...SERVERS, ...PROGRAMS, ...ENTRIES];

/** What stands before the text of the server in a browser. */
const BEFORE_SERVER = [WEB_ENTRY, ENGINE, SERVER_PARTS];

/** Bundles all that the package of the extension has, without writing it. */
export async function bundleForExtension(settings) {
  const { entry, engine, server, node } = await sharesOf(settings);
  const bundle = (name, given) => bundleInMemory(name, { ...settings, given });
  const taking = (name, shares) => bundle(name, { plugins: [takesShared(shares)] });
  const others = names.filter((name) => name !== 'library' && !SHARING.includes(name));
  const takers = await Promise.all([
    ...others.map((name) => bundle(name)),
    taking('server-web', [engine, server, entry]),
    taking('server', [engine, node, server, entry]),
    ...PROGRAMS.map((name) => taking(name, [engine, node])),
    taking('extension', [entry]),
  ]);
  const givers = [
    // Of the programs, the one that decodes pictures says how all of that is bundled.
    await bundle('separator', giving(node, { from: [engine] })),
    await bundle('server-web', giving(server, { from: [engine, entry], format: 'cjs' })),
    await bundle('server-web', giving(engine, { format: 'cjs' })),
    await bundle('extension-web', giving(entry, { program: 'src/extension/extension-web.ts', defines: BEFORE })),
  ];
  return [...takers, ...givers];
}

/** As src/extension/host/web-host.ts reads it. */
const BEFORE = { 'globalThis.tomboloBeforeServer': JSON.stringify(BEFORE_SERVER) };

async function sharesOf(settings) {
  const bundled = await Promise.all(SHARING.map((name) => bundleInMemory(name, settings)));
  const shared = (programs, counts) => {
    const graphs = programs.map((name) => bundled[SHARING.indexOf(name)].graph);
    return sharedModules(graphs, (name) => readFileSync(path.join(root, name), 'utf8'), counts);
  };
  const engine = shared(['server-web', 'server', ...PROGRAMS], ([web, , ...others]) => web && others.some(Boolean));
  const apart = (list, ...taken) => list.filter((name) => !taken.flat().includes(name));
  const protocol = apart(
    shared([...ENTRIES, ...SERVERS], ([web, , ...servers]) => web && servers.some(Boolean)),
    engine,
  );
  const entry = [...new Set([...shared(ENTRIES), ...protocol])];
  return {
    entry: shareOf(WEB_ENTRY, entry),
    engine: shareOf(ENGINE, engine),
    server: shareOf(SERVER_PARTS, apart(shared(SERVERS), engine, protocol)),
    node: shareOf(NODE_PARTS, apart(shared(['server', ...PROGRAMS]), engine)),
  };
}

const shareOf = (file, modules) => ({ file, names: modules, asked: new Set() });

/**
 * How a file that gives parts is bundled, besides what is said of the program that it is bundled as.
 * @param from files that it takes parts from itself
 */
function giving(share, { from = [], program, defines, ...bundle }) {
  return {
    bundle: { ...bundle, entry: 'parts', out: share.file },
    plugins: [takesShared(from), givesShared(share, program)],
    defines,
  };
}
