/** Builds the tree from tags and text in the order of the file: nesting, namespaces, and what is wrong with them. */
import { checkpoint } from '../base/checkpoint';
import type { Span } from '../text/text';
import { MARKUP_ROOM, NAME_ROOM, shortened } from '../text/wording';
import { BuiltAttribute, BuiltComment, BuiltElement, type BuiltNode, BuiltText } from './built-nodes';
import { readCharacterData } from './character-data';
import { EntityTable } from './entities';
import { isName, type KnownName, NamespaceScope, splitName } from './names';
import { XLINK_NAMESPACE } from './namespaces';
import type { ProblemList } from './problems';
import type { InstructionNode, MarkupDocument } from './tree';

/** Broken tags within broken tags would move the same children again and again. */
const MAX_HANDED_ON = 1_000_000;

/** Up to here attributes are compared one by one. */
const MAX_UNINDEXED_ATTRIBUTES = 12;

/** Making a node takes about a microsecond. */
const STEPS_PER_NODE = 4;

export class TreeBuilder {
  readonly entities: EntityTable;
  private readonly topLevel: BuiltNode[] = [];
  private root: BuiltElement | undefined;
  private readonly open: BuiltElement[] = [];
  private readonly openCounts = new Map<string, number>();
  private readonly namespaces = new NamespaceScope();
  private readonly names = new Map<string, KnownName>();
  /** Of the start tag that is being read. */
  private readonly attributes: BuiltAttribute[] = [];
  private attributeNames: Set<string> | undefined;
  private strayTextFound = false;
  private handOnAllowance = MAX_HANDED_ON;

  private readonly text: string;
  private readonly problems: ProblemList;

  constructor(text: string, problems: ProblemList) {
    this.text = text;
    this.problems = problems;

    this.entities = new EntityTable(text.length);
  }

  /** Begins an element at its `<`. Attributes and the end of the start tag follow. */
  openTag(from: number, nameFrom: number, nameTo: number): void {
    checkpoint(STEPS_PER_NODE);
    const name = this.nameAt(nameFrom, nameTo);
    const parent = this.open.at(-1);
    const element = new BuiltElement(this.text, name, parent, from, nameFrom);
    if (parent === undefined) this.addRoot(element);
    else parent.append(element);
    this.open.push(element);
    this.openCounts.set(name.name, (this.openCounts.get(name.name) ?? 0) + 1);
    this.attributes.length = 0;
    this.attributeNames = undefined;
  }

  addAttribute(nameSpan: Span, valueSpan: Span, to: number): void {
    checkpoint(STEPS_PER_NODE);
    const owner = this.open.at(-1)!;
    const { from: nameFrom, to: nameTo } = nameSpan;
    const name = this.nameAt(nameFrom, nameTo);
    if (this.isRepeated(name.name)) {
      this.problems.fatal(
        `${shortened(name.name, NAME_ROOM)} is given twice on this element: the first is used.`,
        nameFrom,
        nameTo,
      );
      return;
    }
    const { from: valueFrom, to: valueTo } = valueSpan;
    const data = readCharacterData(this.text, valueFrom, valueTo, 'attribute', this.entities, this.problems);
    const changed = data.isChanged ? data : undefined;
    this.attributes.push(new BuiltAttribute(owner, name, nameFrom, valueFrom, valueTo, to, changed));
  }

  /** Ends a start tag that lacks its `>`. Where no end tag follows, its element holds none of what comes after. */
  breakOffStartTag(to: number): void {
    this.open.at(-1)!.unterminated = true;
    this.endStartTag(to, false);
  }

  /** Ends the start tag of the element that was opened last. */
  endStartTag(to: number, selfClosing: boolean): void {
    const element = this.open.at(-1)!;
    element.startTo = element.to = to;
    if (this.attributes.length > 0) element.attributes = this.attributes.slice();
    this.declareNamespaces(element);
    element.namespace = this.namespaceOf(element);
    for (const attribute of element.attributes) {
      if (attribute.prefix !== '') attribute.namespace = this.namespaceOf(attribute);
    }
    if (!selfClosing) return;
    element.selfClosing = true;
    this.close();
  }

  /** Closes the nearest open element of that name, and with it those inside that were left open. */
  endTag(from: number, nameFrom: number, nameTo: number, to: number): void {
    const name = this.text.slice(nameFrom, nameTo);
    if ((this.openCounts.get(name) ?? 0) === 0) {
      this.problems.fatal(this.strayEndTagMessage(name), from, to);
      return;
    }
    for (let element = this.open.at(-1)!; element.name !== name; element = this.open.at(-1)!) {
      this.closeWithoutEndTag(` before </${shortened(name, NAME_ROOM)}>`);
    }
    const element = this.open.at(-1)!;
    element.endFrom = from;
    element.to = to;
    this.close();
  }

  addText(from: number, to: number): void {
    const { value, map } = readCharacterData(this.text, from, to, 'text', this.entities, this.problems);
    const parent = this.open.at(-1);
    if (parent === undefined) this.checkTopLevelText(from, to);
    const stop = value.includes(']]>') ? this.text.slice(from, to).indexOf(']]>') : -1;
    if (stop >= 0)
      this.problems.fatal('"]]>" is not allowed in text. Write ]]&gt; instead.', from + stop, from + stop + 3);
    this.append(new BuiltText('text', value, from, to, from, to, parent, map));
  }

  addCdata(from: number, contentFrom: number, contentTo: number, to: number): void {
    const { value, map } = readCharacterData(this.text, contentFrom, contentTo, 'cdata', this.entities, this.problems);
    const parent = this.open.at(-1);
    if (parent === undefined) this.checkTopLevelText(from, to);
    this.append(new BuiltText('cdata', value, from, to, contentFrom, contentTo, parent, map));
  }

  addComment(from: number, contentFrom: number, contentTo: number, to: number): void {
    const value = this.text.slice(contentFrom, contentTo);
    const hyphens = value.indexOf('--');
    const isEnded = to > contentTo;
    if (isEnded && (hyphens >= 0 || value.endsWith('-'))) {
      const at = contentFrom + (hyphens >= 0 ? hyphens : value.length - 1);
      this.problems.fatal('A comment cannot contain "--" or end with "-".', at, at + 2);
    }
    this.append(new BuiltComment(this.text, from, contentFrom, contentTo, to, this.open.at(-1)));
  }

  addInstruction(kind: InstructionNode['kind'], value: string, from: number, to: number): void {
    this.append({ kind, value, span: { from, to }, parent: this.open.at(-1) });
  }

  get hasRoot(): boolean {
    return this.root !== undefined;
  }

  finish(): MarkupDocument {
    while (this.open.length > 0) this.closeWithoutEndTag();
    const { text, topLevel: children, root } = this;
    if (root === undefined && !this.strayTextFound) {
      const blank = text.trim() === '';
      const lack = blank ? 'The file is empty' : 'There is no element here';
      this.problems.fatal(`${lack}: an <svg> element was expected.`, 0, Math.min(text.length, 1));
    }
    return { text, root, children, problems: this.problems.inOrder() };
  }

  private addRoot(element: BuiltElement): void {
    this.topLevel.push(element);
    if (this.root === undefined) {
      this.root = element;
      return;
    }
    const { from, to } = element.nameSpan;
    const name = shortened(element.name, NAME_ROOM);
    this.problems.fatal(`A file has one outermost element: <${name}> is a second one, and is ignored.`, from, to);
  }

  private append(node: BuiltNode): void {
    checkpoint(STEPS_PER_NODE);
    const parent = this.open.at(-1);
    if (parent === undefined) this.topLevel.push(node);
    else parent.append(node);
  }

  private close(): void {
    checkpoint();
    const element = this.open.pop()!;
    this.openCounts.set(element.name, this.openCounts.get(element.name)! - 1);
    if (element.declared) this.namespaces.leave(element.declared);
  }

  /** @param place where the end tag is missing, after "missing" */
  private closeWithoutEndTag(place = ''): void {
    const element = this.open.at(-1)!;
    if (element.unterminated && this.handOn(element)) {
      this.close();
      return;
    }
    const name = shortened(element.name, NAME_ROOM);
    const message = `<${name}> is not closed: </${name}> is missing${place}.`;
    this.problems.fatal(message, element.nameSpan.from, element.nameSpan.to);
    const lastChild = element.children.at(-1);
    if (lastChild !== undefined) element.to = lastChild.span.to;
    this.close();
  }

  /**
   * Makes the children of an element siblings behind it: in `<path d="M0 0` above other shapes, the tag was
   * broken off before its `/>`. False where there is no parent to take them, or too many have been moved.
   */
  private handOn(element: BuiltElement): boolean {
    const { parent, children } = element;
    this.handOnAllowance -= children.length;
    if (parent === undefined || this.handOnAllowance < 0) return false;
    for (const child of children) {
      child.parent = parent;
      parent.append(child);
    }
    element.children = [];
    return true;
  }

  private strayEndTagMessage(name: string): string {
    const current = this.open.at(-1);
    const tag = `</${shortened(name, NAME_ROOM)}>`;
    if (current === undefined) return `${tag} closes nothing: no element is open here.`;
    return `${tag} closes nothing: the open element is <${shortened(current.name, NAME_ROOM)}>.`;
  }

  private isRepeated(name: string): boolean {
    const { attributes } = this;
    if (attributes.length < MAX_UNINDEXED_ATTRIBUTES) return attributes.some((attribute) => attribute.name === name);
    this.attributeNames ??= new Set(attributes.map((attribute) => attribute.name));
    if (this.attributeNames.has(name)) return true;
    this.attributeNames.add(name);
    return false;
  }

  private declareNamespaces(element: BuiltElement): void {
    for (const attribute of element.attributes) {
      const { name, prefix } = attribute;
      if (name !== 'xmlns' && prefix !== 'xmlns') continue;
      const declared = name === 'xmlns' ? '' : attribute.localName;
      this.namespaces.declare(declared, attribute.value);
      (element.declared ??= []).push(declared);
    }
  }

  private namespaceOf({ prefix, nameFrom: from }: BuiltElement | BuiltAttribute): string {
    const uri = this.namespaces.resolve(prefix);
    if (uri !== undefined) return uri;
    const isXlink = prefix === 'xlink';
    const remedy = isXlink ? ` Write xmlns:xlink="${XLINK_NAMESPACE}" on the outermost element.` : '';
    const message = `The prefix ${shortened(prefix, MARKUP_ROOM)} is not declared.${remedy}`;
    this.problems.fatal(message, from, from + prefix.length);
    return isXlink ? XLINK_NAMESPACE : '';
  }

  /** One string for all places of a name: they are compared often. */
  private nameAt(from: number, to: number): KnownName {
    const name = this.text.slice(from, to);
    const known = this.names.get(name);
    if (known !== undefined) return known;
    const split = { name, ...splitName(name) };
    if (isName(name)) this.names.set(name, split);
    else this.problems.fatal(`${shortened(name, MARKUP_ROOM)} is not a valid XML name.`, from, to);
    return split;
  }

  private checkTopLevelText(from: number, to: number): void {
    const raw = this.text.slice(from, to);
    if (raw.trim() === '') return;
    this.strayTextFound = true;
    const start = from + raw.length - raw.trimStart().length;
    const where = this.root === undefined ? 'before the first element' : 'after the outermost element';
    this.problems.fatal(`No text is allowed ${where}.`, start, from + raw.trimEnd().length);
  }
}
