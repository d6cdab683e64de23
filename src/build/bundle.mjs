// npm run build: everything that is shipped, into dist/.
//   --watch     keeps the bundles up to date until Ctrl-C (without declarations)
//   --minify    as for the package: small, no source maps
import { bundle, clean, copyPages, names, watch } from './bundles.mjs';
import { writeDeclarations } from './declarations.mjs';

const flags = new Set(process.argv.slice(2));
const settings = { minify: flags.has('--minify') };

try {
  if (flags.has('--watch')) {
    copyPages();
    await watch(settings);
  } else {
    clean();
    await Promise.all(names.map((name) => bundle(name, settings)));
    copyPages();
    writeDeclarations();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
