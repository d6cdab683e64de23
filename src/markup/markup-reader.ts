/** From tokens to calls of the tree builder, whole tokens and broken ones. */

import type { TokenizerCallbacks } from 'htmlparser2';
import { QuoteType } from 'htmlparser2';
import type { Span } from '../text/text';
import { NAME_ROOM, shortened } from '../text/wording';
import type { MarkupDeclaration } from './doctype';
import { brokenDeclaration, readDoctype } from './doctype';
import { startsName } from './names';
import { isBlank } from './number-reader';
import type { ProblemList } from './problems';
import { RestartingTokenizer } from './restarting-tokenizer';
import type { TreeBuilder } from './tree-builder';
import type { PendingAttribute } from './value-ends';
import { blanksTrimmed, valueBeforeSwallowedName } from './value-ends';

const BYTE_ORDER_MARK = 0xfeff;

/** Takes in the tokens of a text one after the other, and cuts off those that lack their end. */
export class MarkupReader extends RestartingTokenizer implements TokenizerCallbacks {
  protected readonly callbacks = this;
  /** The end of what was taken in. */
  private done = 0;
  private pendingText: Span | undefined;
  /** The name in the start tag that is being read. */
  private openName: Span | undefined;
  private attribute: PendingAttribute | undefined;
  private doctypeSeen = false;

  private readonly builder: TreeBuilder;
  private readonly problems: ProblemList;
  /** Whether nothing is read beyond the start tag of the root. */
  private readonly rootOnly: boolean;

  constructor(text: string, builder: TreeBuilder, problems: ProblemList, rootOnly = false) {
    super(text);
    this.builder = builder;
    this.problems = problems;
    this.rootOnly = rootOnly;
  }

  private get start(): number {
    return this.text.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : 0;
  }

  read(): void {
    this.tokenize(this.start);
    this.flushText();
  }

  protected begin(at: number): void {
    this.done = at;
  }

  ontext(start: number, end: number): void {
    if (this.isSkipping) return;
    const from = this.place(start);
    const to = this.place(end);
    if (from === to) return;
    if (this.text.startsWith('<', from)) this.reportLoneLessThan(from);
    this.extendText(from, to);
  }

  /** A name as messages have room for it. */
  private nameAt(from: number, to: number): string {
    return shortened(this.text.slice(from, to), NAME_ROOM);
  }

  private reportLoneLessThan(at: number): void {
    this.problems.fatal('This "<" does not begin a tag. Write &lt; for the character itself.', at, at + 1);
  }

  private extendText(from: number, to: number): void {
    this.pendingText = { from: this.pendingText?.from ?? from, to };
    this.done = to;
  }

  private flushText(): void {
    const text = this.pendingText;
    if (text === undefined) return;
    this.pendingText = undefined;
    this.builder.addText(text.from, text.to);
  }

  onopentagname(start: number, end: number): void {
    if (this.isSkipping) return;
    const from = this.place(start);
    const to = this.place(end);
    if (!startsName(this.text, from) && this.restartAt(from, false, to)) {
      this.reportLoneLessThan(from - 1);
      this.extendText(from - 1, from);
      return;
    }
    this.flushText();
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

  onclosetag(start: number, end: number): void {
    if (this.isSkipping) return;
    this.flushText();
    const nameFrom = this.place(start);
    const tagFrom = this.text.lastIndexOf('<', nameFrom);
    const greaterThan = this.greaterThan.next(nameFrom);
    // The tokenizer passes over everything up to the next ">" before it can be stopped.
    const readTo = Math.min(greaterThan, this.text.length);
    const tag = this.tagWithin(nameFrom, readTo);
    const isCut = tag !== undefined && this.restartAt(tag, false, readTo);
    const nameTo = isCut ? Math.min(tag, this.place(end)) : this.place(end);
    const isWhole = greaterThan < Infinity && !isCut;
    const to = isWhole ? greaterThan + 1 : nameTo;
    this.checkEndTag(tagFrom, nameFrom, nameTo, isWhole ? greaterThan : undefined);
    this.builder.endTag(tagFrom, nameFrom, nameTo, to);
    this.done = isWhole ? to : this.text.length;
  }

  private checkEndTag(tagFrom: number, nameFrom: number, nameTo: number, greaterThan: number | undefined): void {
    const name = this.nameAt(nameFrom, nameTo);
    if (nameFrom !== tagFrom + 2) {
      this.problems.fatal(`No space is allowed between "</" and ${name}.`, tagFrom, nameTo);
    }
    if (greaterThan === undefined) {
      this.problems.fatal(`The end tag </${name} is not closed: its ">" is missing.`, tagFrom, nameTo);
    } else if (this.text.slice(nameTo, greaterThan).trim() !== '') {
      this.problems.fatal(`Only the name is allowed in the end tag </${name}>.`, nameTo, greaterThan);
    }
  }

  oncomment(start: number, end: number, endOffset: number): void {
    if (this.isSkipping) return;
    this.flushText();
    const contentFrom = this.place(start);
    const from = contentFrom - 4;
    const to = this.place(end) + 1;
    this.done = to;
    if (this.text.startsWith('<!--', from)) {
      this.builder.addComment(from, contentFrom, to - 1 - endOffset, to);
    } else {
      this.problems.fatal('This is neither a tag nor a comment.', this.text.lastIndexOf('<', contentFrom), to);
    }
  }

  oncdata(start: number, end: number, endOffset: number): void {
    if (this.isSkipping) return;
    this.flushText();
    const contentFrom = this.place(start);
    this.done = this.place(end) + 1;
    this.builder.addCdata(contentFrom - '<![CDATA['.length, contentFrom, this.done - 1 - endOffset, this.done);
  }

  ondeclaration(start: number, end: number): void {
    if (!this.isSkipping) this.readDeclaration(this.place(start) - 2, this.place(end) + 1);
  }

  /** Reads what begins with the `<!` at `from`. `readTo`: how far the tokenizer has come. */
  private readDeclaration(from: number, readTo: number): void {
    this.flushText();
    const isDoctype = this.text.startsWith('<!DOCTYPE', from);
    const isFirst = isDoctype && !this.doctypeSeen;
    const declaration = isFirst ? readDoctype(this.text, from, this.builder.entities) : this.foreignDeclaration(from);
    const isMoved = declaration.to !== readTo && this.restartAt(declaration.to, false, readTo);
    const to = isMoved ? declaration.to : readTo;
    this.done = to;
    const misplaced = isFirst && !this.builder.hasRoot ? undefined : 'A declaration is not allowed here.';
    const fault = declaration.fault ?? misplaced;
    if (fault !== undefined) this.problems.fatal(fault, from, Math.min(to, from + '<!DOCTYPE'.length));
    if (!isDoctype) return;
    this.doctypeSeen = true;
    this.builder.addInstruction('doctype', this.text.slice(from, to), from, to);
  }

  private foreignDeclaration(from: number): MarkupDeclaration {
    const greaterThan = this.greaterThan.next(from);
    if (greaterThan < this.lessThan.next(from + 1)) return { to: greaterThan + 1, fault: undefined };
    return brokenDeclaration(this.text, from);
  }

  onprocessinginstruction(start: number, end: number): void {
    if (this.isSkipping) return;
    const from = this.place(start) - 2;
    const contentTo = this.place(end);
    const isXmlDeclaration = /^<\?xml[\s?]/.test(this.text.slice(from, from + 6));
    const cut = isXmlDeclaration ? this.cutAtTag(from + 2, contentTo) : undefined;
    this.addInstruction(from, cut ?? contentTo, cut ?? contentTo + 2, cut === undefined);
    if (isXmlDeclaration && from !== this.start) {
      this.problems.fatal('<?xml …?> is allowed only at the very start of the file.', from, from + 5);
    }
  }

  private addInstruction(from: number, contentTo: number, to: number, isWhole: boolean): void {
    this.flushText();
    this.done = to;
    if (!isWhole) this.problems.fatal('This instruction is not closed: its "?>" is missing.', from, from + 2);
    this.builder.addInstruction('instruction', this.text.slice(from + 2, contentTo), from, to);
  }

  /** Takes what the file breaks off in. */
  protected readRemainder(): void {
    const { text, done: from } = this;
    if (this.openName !== undefined) this.endTagAtEndOfFile();
    else if (from >= text.length) return;
    else if (text.startsWith('<!--', from)) this.readOpenComment(from);
    else if (text.startsWith('<![CDATA[', from)) this.readOpenCdata(from);
    else if (text.startsWith('<?', from)) this.readOpenInstruction(from);
    else if (text.startsWith('<!', from)) this.readDeclaration(from, text.length);
    else this.problems.fatal('The file ends in the middle of a tag.', from, text.length);
  }

  private endTagAtEndOfFile(): void {
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

  /** A comment without end is taken to end with its line, or at a `>` in it. */
  private readOpenComment(from: number): void {
    this.flushText();
    const lineEnd = /[\r\n>]/g;
    lineEnd.lastIndex = from + 4;
    const match = lineEnd.exec(this.text);
    const cut = match === null ? this.text.length : match.index + (match[0] === '>' ? 1 : 0);
    const to = this.restartAt(cut, false, this.text.length) ? cut : this.text.length;
    this.problems.fatal('This comment is not closed: its "-->" is missing.', from, from + 4);
    this.builder.addComment(from, from + 4, to, to);
  }

  private readOpenCdata(from: number): void {
    this.flushText();
    const contentFrom = from + '<![CDATA['.length;
    const tag = this.text.indexOf('</', contentFrom);
    const to = tag >= 0 && this.restartAt(tag, false, this.text.length) ? tag : this.text.length;
    this.problems.fatal('This CDATA section is not closed: its "]]>" is missing.', from, contentFrom);
    this.builder.addCdata(from, contentFrom, to, to);
  }

  private readOpenInstruction(from: number): void {
    const { to } = brokenDeclaration(this.text, from);
    const end = this.restartAt(to, false, this.text.length) ? to : this.text.length;
    this.addInstruction(from, end, end, false);
  }
}
