/** From the tokens of a start tag to calls of the tree builder, of whole tags and of broken ones. */

import { QuoteType } from 'htmlparser2';
import type { Span } from '../text/text';
import { NAME_ROOM, shortened } from '../text/wording';
import { isBlank } from './number-reader';
import type { ProblemList } from './problems';
import { RestartingTokenizer } from './restarting-tokenizer';
import type { TreeBuilder } from './tree-builder';
import type { PendingAttribute } from './value-ends';
import { blanksTrimmed, valueBeforeSwallowedName } from './value-ends';

/** Takes in names, attributes and values, and cuts off those that lack their end. */
export abstract class StartTagReader extends RestartingTokenizer {
  /** The end of what was taken in. */
  protected done = 0;
  /** The name in the start tag that is being read. */
  private openName: Span | undefined;
  private attribute: PendingAttribute | undefined;

  protected readonly builder: TreeBuilder;
  protected readonly problems: ProblemList;
  /** Whether nothing is read beyond the start tag of the root. */
  private readonly rootOnly: boolean;

  constructor(text: string, builder: TreeBuilder, problems: ProblemList, rootOnly: boolean) {
    super(text);
    this.builder = builder;
    this.problems = problems;
    this.rootOnly = rootOnly;
  }

  protected get isInStartTag(): boolean {
    return this.openName !== undefined;
  }

  /** A name as messages have room for it. */
  protected nameAt(from: number, to: number): string {
    return shortened(this.text.slice(from, to), NAME_ROOM);
  }

  /** Begins a start tag with the name that lies between the two. */
  protected openStartTag(from: number, to: number): void {
    const cut = this.cutAtTag(from, to);
    this.openName = { from, to: cut ?? to };
    this.done = this.openName.to;
    this.builder.openTag(from - 1, this.openName.from, this.openName.to);
    if (cut !== undefined) this.endUnfinishedTag();
  }

  onopentagend(at: number): void {
    this.endStartTag(at, false);
  }

  onselfclosingtag(at: number): void {
    this.endStartTag(at, true);
  }

  private endStartTag(at: number, selfClosing: boolean): void {
    if (this.isSkipping) return;
    const to = this.place(at) + 1;
    const gap = this.text.slice(this.done, to - 1);
    if (selfClosing ? gap.trimStart() !== '/' : gap.includes('/')) this.reportStraySlash(gap);
    this.done = to;
    this.openName = undefined;
    this.builder.endStartTag(to, selfClosing);
    if (this.rootOnly) this.stop();
  }

  /** Ends a start tag that has no `>` behind the last thing that belongs to it. */
  private endUnfinishedTag(): void {
    const { from, to } = this.openName!;
    this.problems.fatal(`The tag <${this.nameAt(from, to)} …> is not closed: its ">" is missing.`, from - 1, to);
    this.breakOffStartTag();
  }

  private breakOffStartTag(): void {
    this.openName = undefined;
    this.builder.breakOffStartTag(this.done);
    if (this.rootOnly) this.stop();
  }

  private reportStraySlash(gap: string): void {
    const at = this.done + gap.indexOf('/');
    this.problems.fatal('A "/" is allowed only right before the ">" of a tag.', at, at + 1);
  }

  onattribname(start: number, end: number): void {
    if (this.isSkipping) return;
    const from = this.place(start);
    const to = this.place(end);
    const cut = this.cutAtTag(from, to);
    if (cut !== from) {
      this.checkGapBefore(from);
      this.attribute = { nameSpan: { from, to: cut ?? to }, valueFrom: -1, valueTo: -1 };
      this.done = cut ?? to;
    }
    if (cut === undefined) return;
    if (cut !== from) this.addAttributeWithoutValue(cut);
    this.endUnfinishedTag();
  }

  private checkGapBefore(nameFrom: number): void {
    if (nameFrom === this.done + 1 && isBlank(this.text.charCodeAt(this.done))) return;
    const gap = this.text.slice(this.done, nameFrom);
    if (gap.includes('/')) this.reportStraySlash(gap);
    if (gap !== '' || nameFrom === this.from) return;
    this.problems.fatal('A space is missing before this attribute.', nameFrom, nameFrom + 1);
  }

  onattribdata(start: number, end: number): void {
    const { attribute } = this;
    if (this.isSkipping || attribute === undefined) return;
    if (attribute.valueFrom < 0) attribute.valueFrom = this.place(start);
    attribute.valueTo = this.place(end);
  }

  onattribend(quote: QuoteType, end: number): void {
    if (this.isSkipping || this.attribute === undefined) return;
    if (quote === QuoteType.NoValue) this.addAttributeWithoutValue(this.attribute.nameSpan.to);
    else if (quote === QuoteType.Unquoted) this.endUnquotedValue(this.attribute);
    else this.endQuotedValue(this.attribute, this.place(end));
  }

  private addAttribute(valueFrom: number, valueTo: number, to: number): void {
    const { nameSpan } = this.attribute!;
    this.attribute = undefined;
    this.done = to;
    this.builder.addAttribute(nameSpan, { from: valueFrom, to: valueTo }, to);
  }

  /** `to`: the end of the name, or of the equals sign behind it. */
  private addAttributeWithoutValue(to: number): void {
    const { from, to: nameTo } = this.attribute!.nameSpan;
    const name = this.nameAt(from, nameTo);
    this.problems.fatal(`The attribute ${name} has no value: ${name}="…" was expected.`, from, nameTo);
    this.addAttribute(nameTo, nameTo, to);
  }

  private endUnquotedValue({ nameSpan, valueFrom, valueTo }: PendingAttribute): void {
    const value = this.text.slice(valueFrom, valueTo);
    const isNextAttribute = /^[^\s"'=<>/]+=["']/.test(value);
    if (value === '' || (isNextAttribute && this.restartAt(valueFrom, true, valueTo))) {
      this.addAttributeWithoutValue(this.text.indexOf('=', nameSpan.to) + 1);
      return;
    }
    const cut = this.cutAtTag(valueFrom, valueTo);
    let to = cut ?? valueTo;
    const closes = value.endsWith('/') && this.text.startsWith('>', valueTo);
    if (cut === undefined && closes && this.restartAt(valueTo - 1, true, valueTo)) to -= 1;
    const name = this.nameAt(nameSpan.from, nameSpan.to);
    this.problems.fatal(`The value of ${name} must be in quotes: ${name}="…".`, nameSpan.from, to);
    const quoteBehind = to - 1 > valueFrom && '"\''.includes(this.text.charAt(to - 1)) ? 1 : 0;
    this.addAttribute(valueFrom, to - quoteBehind, to);
    if (cut !== undefined) this.endUnfinishedTag();
  }

  private endQuotedValue({ valueFrom, valueTo }: PendingAttribute, to: number): void {
    if (this.tagWithin(valueFrom, valueTo) !== undefined && this.cutOpenValue(valueTo)) return;
    if (this.cutBeforeSwallowedName(valueFrom, valueTo, to)) return;
    const lessThan = this.lessThan.next(valueFrom);
    if (lessThan < valueTo) {
      this.problems.fatal('"<" is not allowed in a value. Write &lt; instead.', lessThan, lessThan + 1);
    }
    this.addAttribute(valueFrom, valueTo, to);
  }

  /**
   * For `<path d="M0 0 fill="red"/>`: the quote that ends the value was meant to open the next one. Seen by what
   * follows it, where a blank, `/` or `>` should stand, and by a name and an equals sign before it.
   */
  private cutBeforeSwallowedName(valueFrom: number, valueTo: number, to: number): boolean {
    const next = this.text.charCodeAt(to);
    if (to >= this.text.length || isBlank(next) || '/>?'.includes(this.text.charAt(to))) return false;
    const cut = valueBeforeSwallowedName(this.text, valueFrom, valueTo);
    if (cut === undefined || !this.restartAt(cut.nameFrom, true, to)) return false;
    this.reportOpenValue();
    this.addAttribute(valueFrom, cut.valueTo, cut.valueTo);
    return true;
  }

  /**
   * Ends a value that lacks its closing quote before the next tag, or, where the end of its own tag stands before
   * that, there. `readTo`: how far the tokenizer has come. False if the value must be taken as it is.
   */
  private cutOpenValue(readTo: number): boolean {
    const { valueFrom } = this.attribute!;
    const tag = this.tagWithin(valueFrom, readTo) ?? readTo;
    const greaterThan = this.greaterThan.next(valueFrom);
    const inTag = greaterThan < tag;
    const closes = inTag && greaterThan > valueFrom && this.text.startsWith('/', greaterThan - 1);
    const cut = inTag ? greaterThan - (closes ? 1 : 0) : tag;
    if (cut < this.text.length && !this.restartAt(cut, inTag, readTo)) return false;
    this.reportOpenValue();
    const valueTo = blanksTrimmed(this.text, valueFrom, cut);
    this.addAttribute(valueFrom, valueTo, valueTo);
    if (inTag) this.done = cut;
    // Of the quote and the ">" that are missing, the quote alone is reported.
    else this.breakOffStartTag();
    return true;
  }

  private reportOpenValue(): void {
    const { nameSpan, valueFrom } = this.attribute!;
    const name = this.nameAt(nameSpan.from, nameSpan.to);
    this.problems.fatal(`The value of ${name} has no closing quote.`, nameSpan.from, valueFrom);
  }

  /** Ends the start tag that the file breaks off in. */
  protected endTagAtEndOfFile(): void {
    if (this.attribute !== undefined && this.attribute.valueFrom < 0) {
      const equals = this.text.indexOf('=', this.attribute.nameSpan.to);
      this.addAttributeWithoutValue(equals < 0 ? this.attribute.nameSpan.to : equals + 1);
    }
    if (this.attribute !== undefined) {
      if (this.cutOpenValue(this.text.length)) return;
      this.reportOpenValue();
      this.addAttribute(this.attribute.valueFrom, this.text.length, this.text.length);
    }
    this.endUnfinishedTag();
  }
}
