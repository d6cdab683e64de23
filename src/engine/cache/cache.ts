/** What was worked out, kept by what it was worked out from. */

/** A kind of thing that is worked out from inputs, and from nothing else. */
export interface CacheNode<Inputs, Value> {
  readonly name: string;
  /** Tells apart all inputs from which something else may come out. */
  key(inputs: Inputs): string;
  /** About how many bytes the value holds besides what its inputs hold. */
  bytes(value: Value): number;
  /**
   * Whether a value is all that there is to know: what a run had no time to finish is not kept, nor what is worked out
   * from it.
   */
  isWhole?(value: Value): boolean;
}

/** What was worked out. */
export interface Answer<Value> {
  readonly value: Value;
  /**
   * This answer's own number. Whatever is worked out from the answer has this number in its key: so it speaks of the
   * very objects in it, and an edit leaves behind all that depends on what it changed.
   */
  readonly id: number;
}

/** A place where one answer follows another, as a file that is edited: the next one is worked out from the last. */
export interface Slot {
  readonly name: string;
  /**
   * An answer to what is only tried is worked out from the last that was tried since the slot's own last answer, for trials
   * have most in common with each other; it does not take the place of that answer.
   */
  readonly trial: boolean;
}

/** How often an answer was there, and how often it had to be worked out. */
export interface CacheCount {
  readonly hits: number;
  readonly misses: number;
}

interface Entry extends Answer<unknown> {
  readonly bytes: number;
  /** Where it is the last answer. */
  readonly slots: Set<string>;
}

/**
 * Answers of all kinds under one bound: what was not asked for longest goes first. The answer that came last stays
 * until the next one, however large it is.
 */
export class Cache {
  /** By node and key, in the order in which they were last asked for. */
  readonly #entries = new Map<string, Entry>();
  /** By node and slot, the key of the last answer. */
  readonly #slots = new Map<string, string>();
  readonly #counts = new Map<string, { hits: number; misses: number }>();
  readonly #limit: number;
  #bytes = 0;
  /** How many answers there were that were not whole. */
  #partial = 0;
  #lastId = 0;

  /** @param limit bytes, about, that all answers together may hold */
  constructor(limit: number) {
    this.#limit = limit;
  }

  /** About how many bytes all answers hold. */
  get bytes(): number {
    return this.#bytes;
  }

  /**
   * The answer for these inputs.
   * @param compute works it out where it is not there; is given the last answer of the slot, where there is one, for
   * what it has in common with this one. What it throws is thrown on, and nothing is kept.
   */
  ask<Inputs, Value>(
    node: CacheNode<Inputs, Value>,
    inputs: Inputs,
    compute: (previous: Value | undefined) => Value,
    slot?: Slot,
  ): Answer<Value> {
    const key = `${node.name} ${node.key(inputs)}`;
    const known = this.#use(key);
    this.#count(node.name, known ? 'hits' : 'misses');
    const entry = known ?? this.#workOut(node, key, () => compute(slot && (this.#last(node.name, slot) as Value)));
    if (slot) this.#follow(node.name, slot, key);
    return entry as Answer<Value>;
  }

  /** Makes the answer for these inputs, where it is there, the last one of the slot. */
  settle<Inputs, Value>(node: CacheNode<Inputs, Value>, inputs: Inputs, slot: Slot): void {
    const key = `${node.name} ${node.key(inputs)}`;
    if (this.#use(key)) this.#follow(node.name, slot, key);
  }

  /** How often answers were there and were not, by the names of the nodes, since the cache was made. */
  counts(): ReadonlyMap<string, CacheCount> {
    return new Map([...this.#counts].map(([name, count]) => [name, { ...count }]));
  }

  #count(name: string, what: keyof CacheCount): void {
    const count = this.#counts.get(name) ?? { hits: 0, misses: 0 };
    this.#counts.set(name, count);
    count[what] += 1;
  }

  #use(key: string): Entry | undefined {
    const entry = this.#entries.get(key);
    if (!entry) return undefined;
    this.#entries.delete(key);
    this.#entries.set(key, entry);
    return entry;
  }

  #last(name: string, slot: Slot): unknown {
    const [own, tried] = placesOf(name, slot);
    const keys = [...(slot.trial ? [tried] : []), own].map((place) => this.#slots.get(place));
    const entry = keys.flatMap((key) => (key === undefined ? [] : (this.#use(key) ?? [])))[0];
    return entry?.value;
  }

  #follow(name: string, slot: Slot, key: string): void {
    const entry = this.#entries.get(key);
    if (!entry) return;
    const [own, tried] = placesOf(name, slot);
    this.#leave(tried);
    if (!slot.trial) this.#leave(own);
    const place = slot.trial ? tried : own;
    this.#slots.set(place, key);
    entry.slots.add(place);
  }

  #leave(place: string): void {
    const before = this.#slots.get(place);
    if (before !== undefined) this.#entries.get(before)?.slots.delete(place);
    this.#slots.delete(place);
  }

  #workOut<Inputs, Value>(node: CacheNode<Inputs, Value>, key: string, compute: () => Value): Entry {
    const partialBefore = this.#partial;
    const value = compute();
    const isWhole = this.#partial === partialBefore && (node.isWhole?.(value) ?? true);
    this.#lastId += 1;
    const entry = { value, id: this.#lastId, bytes: node.bytes(value), slots: new Set<string>() };
    if (isWhole) this.#keep(key, entry);
    else this.#partial += 1;
    return entry;
  }

  #keep(key: string, entry: Entry): void {
    this.#remove(key);
    this.#entries.set(key, entry);
    this.#bytes += entry.bytes;
    for (const [oldest, { id }] of this.#entries) {
      if (this.#bytes <= this.#limit || id === entry.id) break;
      this.#remove(oldest);
    }
  }

  #remove(key: string): void {
    const entry = this.#entries.get(key);
    if (!entry) return;
    this.#entries.delete(key);
    this.#bytes -= entry.bytes;
    for (const slot of entry.slots) this.#slots.delete(slot);
  }
}

/** Of a slot: of its own last answer, and of what was tried last. */
function placesOf(name: string, slot: Slot): readonly [own: string, tried: string] {
  return [`${name} ${slot.name}`, `${name} ${slot.name} (tried)`];
}
