/** A tokenizer that can be set to another place in the text, in bounded time. */

import type { TokenizerCallbacks } from 'htmlparser2';
import { Tokenizer } from 'htmlparser2';
import { checkpoint } from '../base/checkpoint';
import { MarkFinder } from './mark-finder';
import { startsName } from './names';

/** Reading again what an unfinished token ran over may cost so many code units above four times the length. */
const REREADING_ALLOWANCE = 1_000_000;

/** Code units that the tokenizer is given at once. */
const PORTION = 1 << 18;

/** Where tokenizing begins anew, and whether that is inside a start tag. */
interface Restart {
  readonly at: number;
  readonly inTag: boolean;
}

/**
 * Where a token runs on over the start of other elements it is cut off before them, and the tokenizer is set to
 * that place. An end that is found nowhere in the file makes the tokenizer run to the end of the text, which is why
 * the reading again is bounded; beyond the bound such a token is taken as it is.
 */
export abstract class RestartingTokenizer {
  protected readonly lessThan: MarkFinder;
  protected readonly greaterThan: MarkFinder;
  /** Where the present run of the tokenizer began. */
  protected from = 0;
  protected abstract readonly callbacks: TokenizerCallbacks;
  private allowance: number;
  private tokenizer: Tokenizer | undefined;
  private listening = false;
  private restart: Restart | undefined;
  /** What is added to the tokenizer's offsets. */
  private shift = 0;

  protected readonly text: string;

  constructor(text: string) {
    this.text = text;

    this.lessThan = new MarkFinder(text, '<');
    this.greaterThan = new MarkFinder(text, '>');
    this.allowance = REREADING_ALLOWANCE + 4 * text.length;
  }

  /** Told where a run of the tokenizer begins. */
  protected abstract begin(at: number): void;

  /** Asked to take in what the text breaks off in. */
  protected abstract readRemainder(): void;

  onend(): void {
    // Not called: the tokenizer's own end handling drops or mislabels what is unfinished.
  }

  onattribentity(): void {
    // Not called: entities are resolved with their offsets by the tree builder.
  }

  ontextentity(): void {
    // Not called, likewise.
  }

  protected tokenize(from: number): void {
    let next: Restart | undefined = { at: from, inTag: false };
    while (next !== undefined) next = this.tokenizeFrom(next);
  }

  private tokenizeFrom({ at, inTag }: Restart): Restart | undefined {
    this.from = at;
    this.begin(at);
    this.restart = undefined;
    this.listening = false;
    this.tokenizer ??= new Tokenizer({ xmlMode: true, decodeEntities: false }, this.callbacks);
    this.tokenizer.reset();
    // The tokenizer gets into a start tag only by reading one.
    const lead = inTag ? '<x ' : '';
    this.tokenizer.write(lead);
    this.shift = at - lead.length;
    this.listening = true;
    for (let from = at; from < this.text.length && !this.isSkipping; from += PORTION) {
      const portion = this.text.slice(from, from + PORTION);
      checkpoint(portion.length / 16);
      this.tokenizer.write(portion);
    }
    // The blank ends a name, or a value without quotes, that the file breaks off in.
    if (!this.isSkipping) this.tokenizer.write(' ');
    if (!this.isSkipping) this.readRemainder();
    return this.restart;
  }

  /** Whether what the tokenizer calls is not to be heard: between a request to begin anew and its fulfilment. */
  protected get isSkipping(): boolean {
    return !this.listening || this.restart !== undefined;
  }

  /** Hears nothing of the rest of the text. */
  protected stop(): void {
    this.listening = false;
    this.restart = undefined;
    this.tokenizer?.pause();
  }

  /** The offset in the text for one of the tokenizer, which may lie in the blank behind the text. */
  protected place(offset: number): number {
    return Math.min(offset + this.shift, this.text.length);
  }

  /** Asks for tokenizing anew at `at`; false if that would read too much again, and the token must be taken as is. */
  protected restartAt(at: number, inTag: boolean, readTo: number): boolean {
    const cost = Math.max(0, readTo - at);
    if (at <= this.from || cost > this.allowance) return false;
    this.allowance -= cost;
    this.restart = { at, inTag };
    this.tokenizer?.pause();
    return true;
  }

  /** The offset of the first `<` between `from` and `to` that begins a tag, a comment or the like. */
  protected tagWithin(from: number, to: number): number | undefined {
    for (let at = this.lessThan.next(from); at < to; at = this.lessThan.next(at + 1)) {
      if ('/!?'.includes(this.text.charAt(at + 1) || ' ') || startsName(this.text, at + 1)) return at;
    }
    return undefined;
  }

  /** As `tagWithin`, with tokenizing set to begin anew there. */
  protected cutAtTag(from: number, to: number): number | undefined {
    const at = this.tagWithin(from, to);
    return at !== undefined && this.restartAt(at, false, to) ? at : undefined;
  }
}
