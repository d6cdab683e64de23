/** Reads XML text to a tree, whatever the text: half-typed, broken, or no XML at all. */
import { checkpoint } from '../base/checkpoint';
import { MarkupReader } from './markup-reader';
import { ProblemList } from './problems';
import type { ElementNode, MarkupDocument } from './tree';
import { TreeBuilder } from './tree-builder';

/** Reads `text`. Takes time and memory in proportion to its length; never throws. */
export function parseMarkup(text: string): MarkupDocument {
  const problems = new ProblemList();
  const builder = new TreeBuilder(text, problems);
  reportForbiddenCharacters(text, problems);
  new MarkupReader(text, builder, problems).read();
  return builder.finish();
}

/**
 * Reads `text` as far as the end of the root's start tag: the root and its attributes are those of the whole document.
 * Takes time in proportion to what stands there.
 */
export function parseRootTag(text: string): ElementNode | undefined {
  const problems = new ProblemList();
  const builder = new TreeBuilder(text, problems);
  new MarkupReader(text, builder, problems, true).read();
  return builder.finish().root;
}

/** XML 1.0, production 2. */
function reportForbiddenCharacters(text: string, problems: ProblemList): void {
  const forbidden = /[\0-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]/g;
  checkpoint(text.length / 64);
  for (let match = forbidden.exec(text); match !== null && !problems.full; match = forbidden.exec(text)) {
    const code = match[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
    problems.fatal(`The character U+${code} is not allowed in an XML file.`, match.index, match.index + 1);
  }
}
