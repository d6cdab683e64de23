/** The parts of css-tree that need none of its data: published entries that its types do not describe. */
declare module 'css-tree/parser' {
  import type { parse } from 'css-tree';

  const parser: typeof parse;
  export default parser;
}

declare module 'css-tree/tokenizer' {
  /** The type of tokens that are comments. */
  export const Comment: number;
  /** The tokens one after the other: their type, and where they begin and end in UTF-16 code units. */
  export function tokenize(text: string, take: (type: number, start: number, end: number) => void): void;
}
