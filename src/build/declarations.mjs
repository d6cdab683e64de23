// Type declarations of the library, for `exports` in package.json: src/engine.ts and what it refers to.
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { dist, root } from './bundles.mjs';

/** Declarations are read by resolvers that want file extensions; the sources are written without. */
const withExtensions = (text) => text.replace(/(from |import\()(['"])(\.{1,2}\/[^'"]+)\2/g, '$1$2$3.js$2');

/** Writes dist/types. Throws a sentence that holds the compiler's messages when the engine does not compile. */
export function writeDeclarations() {
  const file = path.join(root, 'tsconfig.json');
  const { config } = ts.readConfigFile(file, ts.sys.readFile);
  const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const ambient = fileNames.filter((name) => name.endsWith('.d.ts'));
  const program = ts.createProgram([path.join(root, 'src/engine.ts'), ...ambient], {
    ...options, types: [], noEmit: false, declaration: true, emitDeclarationOnly: true,
    rootDir: path.join(root, 'src'), outDir: path.join(dist, 'types'),
  });
  const result = program.emit(undefined, (name, text) => {
    mkdirSync(path.dirname(name), { recursive: true });
    writeFileSync(name, withExtensions(text));
  });
  const wrong = [...ts.getPreEmitDiagnostics(program), ...result.diagnostics];
  if (wrong.length === 0) return;
  throw new Error(ts.formatDiagnostics(wrong, {
    getCanonicalFileName: (name) => name, getCurrentDirectory: () => root, getNewLine: () => '\n',
  }));
}
