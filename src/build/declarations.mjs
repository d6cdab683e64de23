// Type declarations of the library, for `exports` in package.json: src/engine/index.ts and what it refers to.
import path from 'node:path';
import ts from 'typescript';
import { dist, root } from './bundles.mjs';

/** Declarations are read by resolvers that want file extensions; the sources are written without. */
const withExtensions = (text) => text.replace(/(from |import\()(['"])(\.{1,2}\/[^'"]+)\2/g, '$1$2$3.js$2');

/** The declarations as path and contents. Throws the compiler's messages where the engine does not compile. */
export function declarations() {
  const source = path.join(root, 'src');
  const { config } = ts.readConfigFile(path.join(source, 'tsconfig.json'), ts.sys.readFile);
  const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, source);
  const ambient = fileNames.filter((name) => name.endsWith('.d.ts'));
  const program = ts.createProgram([path.join(source, 'engine/index.ts'), ...ambient], {
    ...options,
    // Only what the entry leads to is shipped, not the whole part.
    composite: false,
    incremental: false,
    tsBuildInfoFile: undefined,
    declaration: true,
    rootDir: source,
    outDir: path.join(dist, 'types'),
  });
  const files = [];
  const { diagnostics } = program.emit(undefined, (name, text) => {
    files.push({ path: name, contents: withExtensions(text) });
  });
  const wrong = [...ts.getPreEmitDiagnostics(program), ...diagnostics];
  if (wrong.length === 0) return files;
  throw new Error(
    ts.formatDiagnostics(wrong, {
      getCanonicalFileName: (name) => name,
      getCurrentDirectory: () => root,
      getNewLine: () => '\n',
    }),
  );
}
