/** Turns the text between quotes or tags into its value, keeping the way back from the value to the text. */
import { checkpoint } from '../base/checkpoint';
import type { EntityTable } from './entities';
import { referenceAt } from './entities';
import type { ProblemList } from './problems';

/** The way from an index in a value to the offset in the text it came from. */
export interface OffsetMap {
  textOffset(index: number): number;
}

export interface CharacterData {
  readonly value: string;
  /** Undefined where each code unit of the value stands at `from + index`. */
  readonly map: OffsetMap | undefined;
  /** Whether the value differs from the text. */
  readonly isChanged: boolean;
}

/** What a line end or a tab becomes: a blank in attributes, a line feed or itself in text (XML 1.0, 2.11 and 3.3.3). */
export type CharacterContext = 'attribute' | 'text' | 'cdata';

/** What does not stand for itself. */
const CHANGED_IN: Record<CharacterContext, RegExp> = {
  attribute: /[&\r\n\t]/,
  text: /[&\r]/,
  cdata: /\r/,
};

/** Of that, what may be longer or shorter in the value than in the text. */
const RESIZED = /[&\r]/;

const AMPERSAND = 38;
const LINE_FEED = 10;

/** Reads `text` from `from` to `to`. References that cannot be resolved stay as written and are problems. */
export function readCharacterData(
  text: string,
  from: number,
  to: number,
  context: CharacterContext,
  entities: EntityTable,
  problems: ProblemList,
): CharacterData {
  const raw = text.slice(from, to);
  if (!CHANGED_IN[context].test(raw)) return { value: raw, map: undefined, isChanged: false };
  if (!RESIZED.test(raw)) return { value: asBlanks(raw), map: undefined, isChanged: true };
  const builder = new ValueBuilder(from, to, context);
  const changes = context === 'cdata' ? /\r/g : /[&\r]/g;
  for (let match = changes.exec(raw); match !== null; match = changes.exec(raw)) {
    checkpoint(4);
    const at = match.index;
    if (raw.charCodeAt(at) !== AMPERSAND) {
      changes.lastIndex = at + (raw.charCodeAt(at + 1) === LINE_FEED ? 2 : 1);
      builder.replace(raw, at, changes.lastIndex, '\n');
      continue;
    }
    const reference = referenceAt(raw, at, raw.length);
    if (reference === undefined) {
      problems.fatal('A lone "&" is not allowed. Write &amp; instead.', from + at, from + at + 1);
      continue;
    }
    const result = entities.resolve(reference.name);
    if ('fault' in result) {
      problems.fatal(result.fault, from + at, from + reference.to);
      continue;
    }
    changes.lastIndex = reference.to;
    const literal = reference.name.startsWith('#');
    builder.replace(raw, at, reference.to, result.text, literal);
  }
  return builder.finish(raw);
}

function asBlanks(raw: string): string {
  return raw.replace(/[\t\n]/g, ' ');
}

/** Joins the pieces of a value and notes where they came from. */
class ValueBuilder implements OffsetMap {
  private readonly pieces: string[] = [];
  /** Runs by value index; each run's code units stand one by one in the text, or all at its start where `fixed`. */
  private readonly indices: number[] = [];
  private readonly offsets: number[] = [];
  private readonly fixed: boolean[] = [];
  private length = 0;
  private done = 0;

  private readonly from: number;
  private readonly to: number;
  private readonly context: CharacterContext;

  constructor(from: number, to: number, context: CharacterContext) {
    this.from = from;
    this.to = to;
    this.context = context;
  }

  /** Puts `replacement` for the stretch of `raw`. What is `literal` keeps its line ends and tabs. */
  replace(raw: string, from: number, to: number, replacement: string, literal = false): void {
    this.keep(raw, from);
    this.add(replacement, literal, this.from + from, true);
    this.done = to;
  }

  finish(raw: string): CharacterData {
    this.keep(raw, raw.length);
    const value = this.pieces.join('');
    this.pieces.length = 0;
    return { value, map: this, isChanged: true };
  }

  textOffset(index: number): number {
    if (index >= this.length) return this.to;
    let low = 0;
    let high = this.indices.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.indices[middle]! <= index) low = middle;
      else high = middle - 1;
    }
    if (this.indices.length === 0) return this.from;
    return this.offsets[low]! + (this.fixed[low]! ? 0 : Math.max(0, index - this.indices[low]!));
  }

  private keep(raw: string, to: number): void {
    if (to > this.done) this.add(raw.slice(this.done, to), false, this.from + this.done, false);
  }

  private add(text: string, literal: boolean, offset: number, fixed: boolean): void {
    if (text === '') return;
    this.pieces.push(this.context === 'attribute' && !literal ? asBlanks(text) : text);
    this.indices.push(this.length);
    this.offsets.push(offset);
    this.fixed.push(fixed);
    this.length += text.length;
  }
}
