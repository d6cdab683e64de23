/**
 * The tree that reading XML text gives. It always exists: errors are problems beside the tree, never exceptions.
 * Every span refers to the text that was read.
 */
import type { Span } from '../text/text';

export interface MarkupDocument {
  readonly text: string;
  /** The first element at the top level, if there is one. */
  readonly root: ElementNode | undefined;
  /** Everything at the top level: comments, processing instructions, the root, and whatever else was found. */
  readonly children: readonly MarkupNode[];
  readonly problems: readonly MarkupProblem[];
}

export type MarkupNode = ElementNode | TextNode | CommentNode | InstructionNode;

export interface ElementNode {
  readonly kind: 'element';
  /** As written, with the prefix: `svg:rect`. */
  readonly name: string;
  /** Without the prefix: `rect`. */
  readonly localName: string;
  /** The namespace URI that is in force, or '' where none is declared. */
  readonly namespace: string;
  readonly parent: ElementNode | undefined;
  readonly attributes: readonly Attribute[];
  readonly children: readonly MarkupNode[];
  /** From `<` to the end of the end tag (or of the last child, where the end tag is missing). */
  readonly span: Span;
  /** From `<` to the `>` of the start tag, included. */
  readonly startTag: Span;
  readonly nameSpan: Span;
  /** `<g/>` */
  readonly selfClosing: boolean;
  /** The end tag; undefined if self-closing or missing. */
  readonly endTag: Span | undefined;
}

export interface Attribute {
  /** As written, with the prefix: `xlink:href`. */
  readonly name: string;
  readonly localName: string;
  /** '' for attributes without a prefix. */
  readonly namespace: string;
  readonly owner: ElementNode;
  /** Name, equals sign, quotes and value. */
  readonly span: Span;
  readonly nameSpan: Span;
  /** What is between the quotes. Empty at the end of the name where there is no value. */
  readonly valueSpan: Span;
  /** The value with character references and entities replaced, line ends and tabs as blanks. */
  readonly value: string;
  /** The offset in the text of the code unit that gave `value[index]`; `index` may equal the value's length. */
  textOffset(index: number): number;
}

export interface TextNode {
  readonly kind: 'text' | 'cdata';
  readonly value: string;
  readonly span: Span;
  /** What holds the characters: for CDATA, the span without its brackets. */
  readonly contentSpan: Span;
  readonly parent: ElementNode | undefined;
  /** As for attributes. */
  textOffset(index: number): number;
}

export interface CommentNode {
  readonly kind: 'comment';
  readonly value: string;
  readonly span: Span;
  readonly parent: ElementNode | undefined;
}

export interface InstructionNode {
  readonly kind: 'instruction' | 'doctype';
  readonly value: string;
  readonly span: Span;
  readonly parent: ElementNode | undefined;
}

export interface MarkupProblem {
  /** A sentence for the artist: what is wrong and, where it can be told, what to write instead. */
  readonly message: string;
  readonly span: Span;
  /** `fatal`: a conforming XML reader would refuse the document here. `recovered`: it reads on. */
  readonly severity: 'fatal' | 'recovered';
}
