// npm run build: everything that is shipped, into dist/.
//   --watch     keeps the bundles up to date until Ctrl-C (without declarations)
//   --minify    as for the package: small, no source maps
import { bundleInMemory, clean, copyPages, copyPython, makeSchema, names, watch, writeFiles } from './bundles.mjs';
import { translatableStrings, updateManifest } from './contributions.mjs';
import { declarations } from './declarations.mjs';
import { notices } from './notices.mjs';

const flags = new Set(process.argv.slice(2));
const settings = { minify: flags.has('--minify') };

try {
  if (flags.has('--watch')) {
    copyPages();
    copyPython();
    writeFiles([await makeSchema(), translatableStrings()]);
    await watch(settings);
  } else {
    const bundles = await Promise.all(names.map((name) => bundleInMemory(name, settings)));
    const types = declarations();
    const schema = await makeSchema();
    await updateManifest();
    // What worked before stays until there is something to put in its place.
    clean();
    const licences = notices(bundles.flatMap(({ inputs }) => inputs));
    writeFiles([...bundles.flatMap(({ files }) => files), ...types, schema, licences, translatableStrings()]);
    copyPages();
    copyPython();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
