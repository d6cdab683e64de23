/**
 * The nodes of the tree while it is built. Large files have millions of attributes: nodes keep plain offsets, and make
 * their spans, and values that stand in the text as they are, when they are asked for.
 */
import type { Span } from '../text/text';
import type { CharacterData, OffsetMap } from './character-data';
import type { KnownName } from './names';
import type { Attribute, CommentNode, ElementNode, InstructionNode, TextNode } from './tree';

/** What elements have as long as they have none: never written to. */
const NO_ATTRIBUTES: readonly BuiltAttribute[] = [];
const NO_CHILDREN: BuiltNode[] = [];

/** What elements and attributes have in common. */
class NamedNode {
  protected readonly known: KnownName;
  readonly nameFrom: number;

  constructor(known: KnownName, nameFrom: number) {
    this.known = known;
    this.nameFrom = nameFrom;
  }

  get name(): string {
    return this.known.name;
  }

  get prefix(): string {
    return this.known.prefix;
  }

  get localName(): string {
    return this.known.localName;
  }

  get nameSpan(): Span {
    return { from: this.nameFrom, to: this.nameFrom + this.known.name.length };
  }
}

export class BuiltElement extends NamedNode implements ElementNode {
  readonly kind = 'element';
  namespace = '';
  attributes = NO_ATTRIBUTES;
  children = NO_CHILDREN;
  selfClosing = false;
  /** Whether its start tag was broken off. */
  unterminated = false;
  /** Offset of the end tag; negative where there is none. It ends where the element does. */
  endFrom = -1;
  /** The prefixes that its attributes declare, if any. */
  declared: string[] | undefined;
  /** Offsets of the end of the start tag, and of the element's end. */
  startTo: number;
  to: number;

  readonly text: string;
  parent: BuiltElement | undefined;
  readonly from: number;

  /** @param text of the whole document */
  constructor(text: string, known: KnownName, parent: BuiltElement | undefined, from: number, nameFrom: number) {
    super(known, nameFrom);
    this.text = text;
    this.parent = parent;
    this.from = from;

    this.startTo = this.to = nameFrom + known.name.length;
  }

  get span(): Span {
    return { from: this.from, to: this.to };
  }

  get endTag(): Span | undefined {
    return this.endFrom < 0 ? undefined : { from: this.endFrom, to: this.to };
  }

  get startTag(): Span {
    return { from: this.from, to: this.startTo };
  }

  append(child: BuiltNode): void {
    // A first push would reserve room for 17 children, of which most elements have none, one or two.
    if (this.children.length === 0) this.children = [child];
    else this.children.push(child);
  }
}

export class BuiltAttribute extends NamedNode implements Attribute {
  namespace = '';

  readonly owner: BuiltElement;
  private readonly valueFrom: number;
  private readonly valueTo: number;
  private readonly to: number;
  private readonly changed: CharacterData | undefined;

  /** @param changed what the value is, and where it comes from, where it is not what stands between the quotes */
  constructor(
    owner: BuiltElement,
    known: KnownName,
    nameFrom: number,
    valueFrom: number,
    valueTo: number,
    to: number,
    changed: CharacterData | undefined,
  ) {
    super(known, nameFrom);
    this.owner = owner;
    this.valueFrom = valueFrom;
    this.valueTo = valueTo;
    this.to = to;
    this.changed = changed;
  }

  get value(): string {
    return this.changed === undefined ? this.owner.text.slice(this.valueFrom, this.valueTo) : this.changed.value;
  }

  get span(): Span {
    return { from: this.nameFrom, to: this.to };
  }

  get valueSpan(): Span {
    return { from: this.valueFrom, to: this.valueTo };
  }

  textOffset(index: number): number {
    const within = Math.max(0, index);
    if (this.changed?.map !== undefined) return this.changed.map.textOffset(within);
    return Math.min(this.valueFrom + within, this.valueTo);
  }
}

export class BuiltText implements TextNode {
  readonly kind: 'text' | 'cdata';
  readonly value: string;
  private readonly from: number;
  private readonly to: number;
  private readonly contentFrom: number;
  private readonly contentTo: number;
  parent: BuiltElement | undefined;
  private readonly map: OffsetMap | undefined;

  constructor(
    kind: 'text' | 'cdata',
    value: string,
    from: number,
    to: number,
    contentFrom: number,
    contentTo: number,
    parent: BuiltElement | undefined,
    map: OffsetMap | undefined,
  ) {
    this.kind = kind;
    this.value = value;
    this.from = from;
    this.to = to;
    this.contentFrom = contentFrom;
    this.contentTo = contentTo;
    this.parent = parent;
    this.map = map;
  }

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

/** A program may write a million of them: what one says is taken from the text when it is asked for. */
export class BuiltComment implements CommentNode {
  readonly kind = 'comment';
  private readonly text: string;
  private readonly from: number;
  private readonly to: number;
  private readonly contentFrom: number;
  private readonly contentTo: number;
  parent: BuiltElement | undefined;

  /** @param text of the whole document */
  constructor(
    text: string,
    from: number,
    contentFrom: number,
    contentTo: number,
    to: number,
    parent: BuiltElement | undefined,
  ) {
    this.text = text;
    this.from = from;
    this.to = to;
    this.contentFrom = contentFrom;
    this.contentTo = contentTo;
    this.parent = parent;
  }

  get value(): string {
    return this.text.slice(this.contentFrom, this.contentTo);
  }

  get span(): Span {
    return { from: this.from, to: this.to };
  }
}

type Movable<Node> = Omit<Node, 'parent'> & { parent: BuiltElement | undefined };

export type BuiltNode = BuiltElement | BuiltText | BuiltComment | Movable<InstructionNode>;
