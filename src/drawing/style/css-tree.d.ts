/** The parts of css-tree that need none of its data: published entries that its types do not describe. */
declare module 'css-tree/parser' {
  import type { parse } from 'css-tree';

  const parser: typeof parse;
  export default parser;
}

declare module 'css-tree/generator' {
  import type { generate } from 'css-tree';

  const generator: typeof generate;
  export default generator;
}
