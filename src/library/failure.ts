/** How the library fails: one kind of error, one sentence. And how what it is asked with is read. */
import { Stopped, underWatch } from '../base/checkpoint';
import { parseLength } from '../config/values';

/**
 * What every function of the library throws where it cannot do what it was asked: its message is one sentence for
 * people. What is wrong with a drawing is never thrown, but among the findings.
 *
 * @example
 * ```js
 * import { check, StencilError } from 'tombolo-stencil';
 *
 * try {
 *   check(svgText, { width: -5 });
 * } catch (error) {
 *   if (error instanceof StencilError) console.error(error.message); // width: -5 is no length: …
 * }
 * ```
 */
export class StencilError extends Error {
  /** Always `StencilError`. */
  override readonly name = 'StencilError';
}

/**
 * A length: a number of millimetres, or a text with its unit (`'148mm'`, `'6in'`, `'.5cm'`, `'12pt'`).
 *
 * @example
 * ```ts
 * const widths: Length[] = [148, '148mm', '5.83in'];
 * ```
 */
export type Length = number | string;

/**
 * What ends long work: an `AbortSignal`, or any object whose `aborted` becomes true. The work holds its thread, so that only
 * what another thread writes reaches it while it runs: a look into shared memory does, a timer does not. Between two files
 * of {@link checkEach} every signal does.
 *
 * @example
 * ```js
 * const shared = new Int32Array(new SharedArrayBuffer(4)); // the other thread stores 1 there
 * check(svgText, { signal: { get aborted() { return Atomics.load(shared, 0) === 1; } } });
 * ```
 */
export interface Signal {
  /** Whether nobody waits any more. */
  readonly aborted: boolean;
  /** What is thrown then; a `StencilError` where there is none. */
  readonly reason?: unknown;
}

/** Reads one option; its name is for the sentence. @throws StencilError where it is wrong */
export type Reader<T> = (value: unknown, name: string) => T;

/**
 * Reads all options of a function; those that are undefined are as if they were not there.
 * @throws StencilError where one is wrong, or unknown
 */
export function readOptions<T extends object>(
  given: unknown,
  asker: string,
  readers: { readonly [K in keyof T]-?: Reader<Exclude<T[K], undefined>> },
): Partial<T> {
  if (given === undefined) return {};
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    throw new StencilError(`${asker} takes its options as an object, not as ${wordFor(given)}.`);
  }
  const read: [string, unknown][] = [];
  for (const [name, value] of Object.entries(given)) {
    if (!Object.hasOwn(readers, name)) {
      throw new StencilError(`${asker} has no option "${name}": there are ${Object.keys(readers).join(', ')}.`);
    }
    if (value !== undefined) read.push([name, (readers as Record<string, Reader<unknown>>)[name]?.(value, name)]);
  }
  return Object.fromEntries(read) as Partial<T>;
}

/** A length of more than nothing, mm. */
export const positiveLength: Reader<number> = (value, name) => {
  const length = millimetres(value);
  if (length !== undefined && length > 0) return length;
  throw new StencilError(`${name}: ${shown(value)} is no length of more than nothing; write 148 (mm) or "148mm".`);
};

/** A length that may be nothing, mm. */
export const anyLength: Reader<number> = (value, name) => {
  const length = millimetres(value);
  if (length !== undefined && length >= 0) return length;
  throw new StencilError(`${name}: ${shown(value)} is no length; write 0.1 (mm) or "0.1mm".`);
};

function millimetres(value: unknown): number | undefined {
  const length = typeof value === 'string' ? parseLength(value) : value;
  return typeof length === 'number' && Number.isFinite(length) ? length : undefined;
}

export const truth: Reader<boolean> = (value, name) => {
  if (typeof value === 'boolean') return value;
  throw new StencilError(`${name}: ${shown(value)} is neither true nor false.`);
};

export const words: Reader<string> = (value, name) => {
  if (typeof value === 'string') return value;
  throw new StencilError(`${name} is a text, not ${wordFor(value)}.`);
};

/** A number between two. */
export function numberFrom(least: number, most: number): Reader<number> {
  return (value, name) => {
    if (typeof value === 'number' && value >= least && value <= most) return value;
    throw new StencilError(`${name}: ${shown(value)} is no number from ${least} to ${most}.`);
  };
}

export function oneOf<const T extends string>(choices: readonly T[]): Reader<T> {
  return (value, name) => {
    const found = choices.find((choice) => choice === value);
    if (found !== undefined) return found;
    throw new StencilError(`${name}: ${shown(value)} is none of ${choices.join(', ')}.`);
  };
}

export const colour: Reader<string> = (value, name) => {
  if (typeof value === 'string' && /^#[\da-f]{6}$/i.test(value)) return value;
  throw new StencilError(`${name}: ${shown(value)} is no colour such as "#f4efe4".`);
};

export const signalOption: Reader<Signal> = (value, name) => {
  if (typeof value === 'object' && value !== null && 'aborted' in value) return value as Signal;
  throw new StencilError(`${name} is an AbortSignal, not ${wordFor(value)}.`);
};

/** A function; what it takes, its type says. */
export function callback<T extends (...values: never[]) => unknown>(): Reader<T> {
  return (value, name) => {
    if (typeof value === 'function') return value as T;
    throw new StencilError(`${name} is a function, not ${wordFor(value)}.`);
  };
}

/** @throws StencilError where it is no text */
export function svgText(value: unknown, asker: string): string {
  if (typeof value === 'string') return value;
  throw new StencilError(`${asker} takes the text of an SVG file, not ${wordFor(value)}.`);
}

/** A layer by its name. @throws StencilError where no layer has it */
export function knownLayer(layer: string | undefined, names: readonly string[]): string | undefined {
  if (layer === undefined || names.includes(layer)) return layer;
  const there = names.length === 0 ? 'there are none' : `there are ${names.map((name) => `"${name}"`).join(', ')}`;
  throw new StencilError(`No layer is called "${layer}": ${there}.`);
}

/**
 * Does the work, unless nobody waits for it.
 * @throws the signal's reason, or StencilError where it gives none
 */
export function whileWanted<T>(signal: Signal | undefined, work: () => T): T {
  if (!signal) return work();
  throwIfAborted(signal);
  try {
    return underWatch(() => (signal.aborted ? 'cancelled' : undefined), work);
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
    throw signal.reason ?? new StencilError('Nobody waits for it any more.', { cause: error });
  }
}

export function throwIfAborted(signal: Signal | undefined): void {
  if (signal?.aborted) throw signal.reason ?? new StencilError('Nobody waits for it any more.');
}

function shown(value: unknown): string {
  return typeof value === 'string'
    ? `"${value.slice(0, 40)}"`
    : typeof value === 'number'
      ? String(value)
      : wordFor(value);
}

function wordFor(value: unknown): string {
  if (value === null || value === undefined) return String(value);
  if (Array.isArray(value)) return 'a list';
  const article = typeof value === 'object' ? 'an' : 'a';
  return `${article} ${typeof value}`;
}
