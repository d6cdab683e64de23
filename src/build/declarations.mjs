// Type declarations of the library, for `exports` in package.json: src/engine/index.ts and what it refers to.
import path from 'node:path';
import ts from 'typescript';
import { dist, root } from './bundles.mjs';

/** Declarations are read by resolvers that want file extensions; the sources are written without. */
const withExtensions = (text) => text.replace(/(from |import\()(['"])(\.{1,2}\/[^'"]+)\2/g, '$1$2$3.js$2');

/** The declarations as path and contents. Throws the compiler's messages where the engine does not compile. */
export function declarations() {
  const { config } = ts.readConfigFile(path.join(root, 'tsconfig.json'), ts.sys.readFile);
  const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const ambient = fileNames.filter((name) => name.endsWith('.d.ts'));
  const program = ts.createProgram([path.join(root, 'src/engine/index.ts'), ...ambient], {
    ...options,
    types: [],
    noEmit: false,
    declaration: true,
    emitDeclarationOnly: true,
    rootDir: path.join(root, 'src'),
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
