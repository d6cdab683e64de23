// What packages bring along that is never run here, and is left out of the bundles. Each entry says why that holds.
import { realpathSync } from 'node:fs';
import path from 'node:path';

/** In place of what a package exports from its entry, only the parts that are used. */
const PARTS = {
  // Booleans and offsets of polygons; not its triangulation, rectangles and sums.
  'clipper2-ts': ['dist/Core.js', 'dist/Engine.js', 'dist/Offset.js'].map(
    (file) => `export * from 'clipper2-ts/${file}';`,
  ),
  // Two of its predicates; the others bring tables along.
  'robust-predicates': ['orient2d', 'incircle'].map(
    (name) => `export { ${name} } from 'robust-predicates/esm/${name}.js';`,
  ),
  // The tokenizer alone; not the parser of HTML, nor feeds.
  htmlparser2: ["export { default as Tokenizer, QuoteType } from 'htmlparser2/dist/Tokenizer.js';"],
};

/** What css-tree takes apart of a style sheet, as src/drawing/style/declarations.ts asks it to: values and conditions stay text. */
const CSS_NODES =
  'AnPlusB Atrule AttributeSelector Block CDC CDO ClassSelector Combinator Comment Declaration DeclarationList IdSelector ' +
  'Identifier NestingSelector Nth Operator Parentheses Percentage PseudoClassSelector PseudoElementSelector Raw Rule ' +
  'Selector SelectorList String StyleSheet TypeSelector WhiteSpace';

/** What css-tree knows of rules with a block, without what it would make of their conditions. */
const CSS_RULES = `
  const rules = { parse: { block(nested = false) { return this.Block(nested); } } };
  const declarations = { parse: { block() { return this.Block(true); } } };
  export default {
    container: rules, media: rules, scope: rules, supports: rules, 'starting-style': rules,
    'font-face': declarations, nest: declarations, page: declarations,
    layer: { parse: { block() { return this.Block(false); } } },
    import: { parse: { block: null } },
  };`;

/** In place of whole files. */
const EMPTY = [
  // Entities of HTML: the tokenizer is told to leave entities alone, see src/markup/restarting-tokenizer.ts.
  [
    /entities\/dist\/decode\.js$/,
    'export const htmlDecodeTree = [], xmlDecodeTree = []; export class EntityDecoder {} export const DecodingMode = {}, fromCodePoint = undefined;',
  ],
  [
    /css-tree\/lib\/syntax\/node\/index-parse\.js$/,
    CSS_NODES.split(' ')
      .map((name) => `export { parse as ${name} } from './${name}.js';`)
      .join('\n'),
  ],
  [
    /css-tree\/lib\/syntax\/scope\/index\.js$/,
    "export { default as Selector } from './selector.js'; export const AtrulePrelude = {}, Value = {};",
  ],
  [/css-tree\/lib\/syntax\/atrule\/index\.js$/, CSS_RULES],
  // Pictures of the text round an error: nobody is shown those.
  [
    /css-tree\/lib\/parser\/SyntaxError\.js$/,
    'export function SyntaxError(message, _source, offset) { return Object.assign(new Error(message), { offset }); }',
  ],
  // The tree that css-select takes unless it is given another: src/drawing/style/matcher.ts gives ours.
  [/domutils\/dist\/(?:esm\/|lib\/)?index\.js$/, 'export {};'],
];

/** A plugin of esbuild. @param root the repository's */
export function leftOut(root) {
  // As esbuild names it: where the folder is a link, a file would be taken for another one.
  const within = (name) => realpathSync(path.join(root, 'node_modules', name));
  return {
    name: 'left-out',
    setup({ onResolve, onLoad }) {
      for (const [name, lines] of Object.entries(PARTS)) {
        onResolve({ filter: new RegExp(`^${name}$`) }, () => ({ path: name, namespace: 'parts', sideEffects: false }));
        onResolve({ filter: new RegExp(`^${name}/(?:dist|esm)/`) }, ({ path: file }) => ({
          path: within(file),
          sideEffects: false,
        }));
        onLoad({ filter: new RegExp(`^${name}$`), namespace: 'parts' }, () => ({
          contents: lines.join('\n'),
          resolveDir: root,
        }));
      }
      for (const [filter, contents] of EMPTY) onLoad({ filter }, () => ({ contents }));
    },
  };
}
