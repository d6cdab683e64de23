/** From tokens to calls of the tree builder, whole tokens and broken ones. */

import type { TokenizerCallbacks } from 'htmlparser2';
import type { Span } from '../text/text';
import type { MarkupDeclaration } from './doctype';
import { brokenDeclaration, readDoctype } from './doctype';
import { startsName } from './names';
import type { ProblemList } from './problems';
import { StartTagReader } from './start-tag-reader';
import type { TreeBuilder } from './tree-builder';

const BYTE_ORDER_MARK = 0xfeff;

/** Takes in the tokens of a text one after the other, and cuts off those that lack their end. */
export class MarkupReader extends StartTagReader implements TokenizerCallbacks {
  protected readonly callbacks = this;
  private pendingText: Span | undefined;
  private doctypeSeen = false;

  /** @param rootOnly whether nothing is read beyond the start tag of the root */
  constructor(text: string, builder: TreeBuilder, problems: ProblemList, rootOnly = false) {
    super(text, builder, problems, rootOnly);
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
    this.openStartTag(from, to);
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
    if (this.isInStartTag) this.endTagAtEndOfFile();
    else if (from >= text.length) return;
    else if (text.startsWith('<!--', from)) this.readOpenComment(from);
    else if (text.startsWith('<![CDATA[', from)) this.readOpenCdata(from);
    else if (text.startsWith('<?', from)) this.readOpenInstruction(from);
    else if (text.startsWith('<!', from)) this.readDeclaration(from, text.length);
    else this.problems.fatal('The file ends in the middle of a tag.', from, text.length);
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
