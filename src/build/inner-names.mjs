// The names of fields and methods that only the polygon library and the tokenizer use: they are long, many, and nobody's business.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

const FILES = [
  ...['Core', 'Engine', 'Offset'].map((name) => `clipper2-ts/dist/${name}.js`),
  'htmlparser2/dist/Tokenizer.js',
];

/** What every object of JavaScript may have. */
const BUILT_IN = new Set(
  [Object, Array, String, Number, Map, Set, WeakMap, Float64Array, Function, Error, Symbol, Math, JSON].flatMap(
    (each) => [...Object.getOwnPropertyNames(each), ...Object.getOwnPropertyNames(each.prototype ?? {})],
  ),
);

/** A pattern for esbuild's `mangleProps`. @param root the repository's */
export function innerNames(root) {
  const text = FILES.map((name) => readFileSync(path.join(root, 'node_modules', name), 'utf8')).join('\n');
  // Methods and fields of classes, as the package is laid out.
  const found = [...text.matchAll(/^ {4}(?:static )?(\w+)(?:\(| = |;)|\bthis\.(\w+) = /gm)].map(
    ([, one, two]) => one ?? two,
  );
  const source = path.join(root, 'src');
  const ours = new Set(
    readdirSync(source, { recursive: true })
      .filter((name) => /\.ts$/.test(name) && !name.includes('node_modules'))
      .flatMap((name) => readFileSync(path.join(source, name), 'utf8').match(/\w+/g) ?? []),
  );
  const names = [...new Set(found)].filter((name) => name.length > 7 && !ours.has(name) && !BUILT_IN.has(name));
  return new RegExp(`^(?:${names.sort().join('|')})$`);
}
