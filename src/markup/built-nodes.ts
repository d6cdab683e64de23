/**
 * The nodes of the tree while it is built. Large files have millions of attributes: nodes keep plain offsets, and make
 * their spans when they are asked for.
 */
import type { Span } from '../text';
import type { OffsetMap } from './character-data';
import type { KnownName } from './names';
import type { Attribute, CommentNode, ElementNode, InstructionNode, TextNode } from './tree';

export class BuiltElement implements ElementNode {
  readonly kind = 'element';
  readonly name: string;
  readonly prefix: string;
  readonly localName: string;
  namespace = '';
  attributes: readonly BuiltAttribute[] = [];
  children: BuiltNode[] = [];
  selfClosing = false;
  /** Whether its start tag was broken off. */
  brokenOff = false;
  endTag: Span | undefined;
  /** The prefixes that its attributes declare, if any. */
  declared: string[] | undefined;
  /** Offsets of the end of the start tag, and of the element's end. */
  startTo: number;
  to: number;

  constructor(
    { name, prefix, localName }: KnownName,
    public parent: BuiltElement | undefined,
    readonly from: number,
    readonly nameFrom: number,
    private readonly nameTo: number,
  ) {
    this.name = name;
    this.prefix = prefix;
    this.localName = localName;
    this.startTo = this.to = nameTo;
  }

  get span(): Span {
    return { from: this.from, to: this.to };
  }

  get startTag(): Span {
    return { from: this.from, to: this.startTo };
  }

  get nameSpan(): Span {
    return { from: this.nameFrom, to: this.nameTo };
  }

  append(child: BuiltNode): void {
    // A first push would reserve room for 17 children, of which most elements have none, one or two.
    if (this.children.length === 0) this.children = [child];
    else this.children.push(child);
  }
}

export class BuiltAttribute implements Attribute {
  readonly name: string;
  readonly prefix: string;
  readonly localName: string;
  namespace = '';

  constructor(
    readonly owner: BuiltElement,
    { name, prefix, localName }: KnownName,
    readonly nameFrom: number,
    private readonly nameTo: number,
    private readonly valueFrom: number,
    private readonly valueTo: number,
    private readonly to: number,
    readonly value: string,
    private readonly map: OffsetMap | undefined,
  ) {
    this.name = name;
    this.prefix = prefix;
    this.localName = localName;
  }

  get span(): Span {
    return { from: this.nameFrom, to: this.to };
  }

  get nameSpan(): Span {
    return { from: this.nameFrom, to: this.nameTo };
  }

  get valueSpan(): Span {
    return { from: this.valueFrom, to: this.valueTo };
  }

  textOffset(index: number): number {
    const within = Math.max(0, index);
    if (this.map !== undefined) return this.map.textOffset(within);
    return Math.min(this.valueFrom + within, this.valueTo);
  }
}

export class BuiltText implements TextNode {
  constructor(
    readonly kind: 'text' | 'cdata',
    readonly value: string,
    private readonly from: number,
    private readonly to: number,
    private readonly contentFrom: number,
    private readonly contentTo: number,
    public parent: BuiltElement | undefined,
    private readonly map: OffsetMap | undefined,
  ) {}

  get span(): Span {
    return { from: this.from, to: this.to };
  }

  get contentSpan(): Span {
    return { from: this.contentFrom, to: this.contentTo };
  }

  textOffset(index: number): number {
    const within = Math.max(0, index);
    if (this.map !== undefined) return this.map.textOffset(within);
    return Math.min(this.contentFrom + within, this.contentTo);
  }
}

type Movable<Node> = Omit<Node, 'parent'> & { parent: BuiltElement | undefined };

export type BuiltNode = BuiltElement | BuiltText | Movable<CommentNode> | Movable<InstructionNode>;
