// npm run build: everything that is shipped, into dist/.
//   --watch     keeps the bundles up to date until Ctrl-C (without declarations)
//   --minify    as for the packages: small, no source maps
//   --extension without the library, and programs share what they have in common, for the extension's package
//   --library   the engine once for all programs, for the library's package
import {
  bundleAll,
  clean,
  copyPages,
  copyPython,
  makeSchema,
  names,
  watch,
  writeFiles,
  writeRequired,
} from './bundles.mjs';
import { translatableStrings, updateManifest } from './contributions.mjs';
import { bundleForExtension } from './extension-bundles.mjs';
import { declarations } from './library.mjs';
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
    const isWhole = !flags.has('--extension');
    const bundles = isWhole
      ? await bundleAll(names, { ...settings, shared: flags.has('--library') })
      : await bundleForExtension(settings);
    const types = isWhole ? await declarations() : [];
    const schema = await makeSchema(settings);
    await updateManifest();
    // What worked before stays until there is something to put in its place.
    clean();
    const licences = notices(bundles.flatMap(({ inputs }) => inputs));
    writeFiles([...bundles.flatMap(({ files }) => files), ...types, schema, licences, translatableStrings()]);
    if (isWhole) writeRequired();
    copyPages();
    copyPython();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
