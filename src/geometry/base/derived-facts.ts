/**
 * The one place where facts are kept that were derived from objects which never change: rings, regions, chains of curves.
 * Each kind of fact has a table of its own, by name. A fact lives as long as its object, so that what is met again after
 * an edit is not worked out again. Nothing else at the top of a module may remember.
 */
import { asserting } from '../../base/defined';

/** What became of the questions to a table. */
export interface FactCounts {
  /** So many facts were put in. */
  readonly derived: number;
  /** So many questions were answered from the table. */
  readonly recalled: number;
}

interface Fact<Value> {
  readonly value: Value;
  /** Of the object when the fact was derived; 0 where none is taken. */
  readonly checksum: number;
}

/** Facts of one kind, each of one object. */
export class FactTable<Key extends object, Value> {
  private facts = new WeakMap<Key, Fact<Value>>();
  private derived = 0;
  private recalled = 0;

  readonly name: string;

  constructor(name: string) {
    this.name = name;
  }

  /**
   * What is known of the object. Wrapped, as `undefined` is a fact like others.
   * @throws Error in tests, when the object was written to since
   */
  find(key: Key): { readonly value: Value } | undefined {
    const fact = this.facts.get(key);
    if (!fact) return undefined;
    if (asserting && fact.checksum !== checksumOf(key)) throw new Error(`Changed since it was known: ${this.name}.`);
    this.recalled += 1;
    return fact;
  }

  set(key: Key, value: Value): void {
    this.facts.set(key, { value, checksum: asserting ? checksumOf(key) : 0 });
    this.derived += 1;
  }

  get counts(): FactCounts {
    return { derived: this.derived, recalled: this.recalled };
  }

  clear(): void {
    this.facts = new WeakMap();
    [this.derived, this.recalled] = [0, 0];
  }
}

/** Numbers at two places weigh differently, so that swapping them shows; of anything but arrays of numbers it is 0. */
function checksumOf(key: object): number {
  if (!(key instanceof Float64Array)) return 0;
  let sum = 0;
  for (let i = 0; i < key.length; i += 1) sum += key[i]! * (i + 1);
  return Number.isNaN(sum) ? 0 : sum;
}

class DerivedFacts {
  private readonly tables = new Map<string, FactTable<object, unknown>>();

  /**
   * Makes a table. It is called once for each name, when its module is loaded.
   * @throws Error when the name is taken
   */
  table<Key extends object, Value>(name: string): FactTable<Key, Value> {
    if (this.tables.has(name)) throw new Error(`There are two tables of derived facts by the name ${name}.`);
    const table = new FactTable<Key, Value>(name);
    this.tables.set(name, table as unknown as FactTable<object, unknown>);
    return table;
  }

  /** Of each table, by name, since the last clearing. */
  counts(): ReadonlyMap<string, FactCounts> {
    return new Map([...this.tables].map(([name, table]) => [name, table.counts]));
  }

  /** Forgets everything: the next run works all of it out anew, with the same results. */
  clear(): void {
    for (const table of this.tables.values()) table.clear();
  }
}

export const derivedFacts = new DerivedFacts();

/**
 * The function, made to remember what it gave for each object as long as that object lives.
 * @param name of its table of facts
 */
/* @__NO_SIDE_EFFECTS__ */ export function memoizeByIdentity<Key extends object, Value>(
  name: string,
  compute: (of: Key) => Value,
): (of: Key) => Value {
  const table = derivedFacts.table<Key, Value>(name);
  return (of) => {
    const known = table.find(of);
    if (known) return known.value;
    const value = compute(of);
    table.set(of, value);
    return value;
  };
}
