// What of package.json and of its strings is made from the sources: the checks that the settings name, and the words of
// the extension that can be translated.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { dist, root, runBundled } from './bundles.mjs';

const read = (name) => readFileSync(path.join(root, name), 'utf8');
const text = (value) => `${JSON.stringify(value, null, 2)}\n`;

/** Brings package.json and package.nls.json up to date; a file that is so already is not touched. */
export async function updateManifest() {
  const { writeSeveritySetting } = await runBundled('src/build/severity-setting.ts');
  const [manifest, strings] = ['package.json', 'package.nls.json'].map((name) => JSON.parse(read(name)));
  writeSeveritySetting(manifest, strings);
  for (const [name, value] of [
    ['package.json', manifest],
    ['package.nls.json', strings],
  ]) {
    if (read(name) !== text(value)) writeFileSync(path.join(root, name), text(value));
  }
}

/** The strings that the extension shows, as translators take them: path and contents. */
export function translatableStrings() {
  const folder = path.join(root, 'src/extension');
  const files = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.ts'));
  const strings = new Set();
  for (const name of files) {
    const source = ts.createSourceFile(name, readFileSync(path.join(folder, name), 'utf8'), ts.ScriptTarget.Latest);
    const look = (node) => {
      if (ts.isCallExpression(node) && /(?:^|\.)l10n\.t$/.test(node.expression.getText(source))) {
        const [words] = node.arguments;
        if (words && ts.isStringLiteralLike(words)) strings.add(words.text);
      }
      ts.forEachChild(node, look);
    };
    look(source);
  }
  const bundle = Object.fromEntries([...strings].sort().map((words) => [words, words]));
  return { path: path.join(dist, 'l10n/bundle.l10n.json'), contents: text(bundle) };
}
