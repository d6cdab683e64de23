/** Parts of what looks at messages of our pages: nothing but the keys that are known is let through, each of its type and size. */

export type Test = (value: unknown) => boolean;

/** Offsets, versions, numbers of things: no text is longer. */
const MOST = 2 ** 31;
/** mm, and factors of matrices: no sheet is larger than 100 m. */
const FARTHEST = 1e6;
/** Layers that a stack may have, bridges that a plan may have. */
const MOST_LISTED = 10_000;
/** Characters of a name or an address. */
const LONGEST = 10_000;

export const flag: Test = (value) => typeof value === 'boolean';
export const text: Test = (value) => typeof value === 'string' && value.length <= LONGEST;
export const count: Test = (value) => Number.isInteger(value) && Number(value) >= 0 && Number(value) < MOST;
export const whole: Test = (value) => Number.isInteger(value) && Math.abs(Number(value)) < MOST;
export const distance: Test = (value) => typeof value === 'number' && Math.abs(value) <= FARTHEST;
export const size: Test = (value) => distance(value) && Number(value) >= 0;

export const oneOf =
  (...words: readonly unknown[]): Test =>
  (value) =>
    words.includes(value);

export const list =
  (item: Test, most = MOST_LISTED): Test =>
  (value) =>
    Array.isArray(value) && value.length <= most && value.every(item);

export const either =
  (...tests: readonly Test[]): Test =>
  (value) =>
    tests.some((test) => test(value));

/** A list with one value for each test. */
export const tuple =
  (...tests: readonly Test[]): Test =>
  (value) =>
    Array.isArray(value) && value.length === tests.length && tests.every((test, i) => test(value[i]));

/** An object with these keys and no others; those that end with `?` may be left out. */
export function object(tests: Readonly<Record<string, Test>>): Test {
  const known = new Map(Object.entries(tests).map(([key, test]) => [key.replace(/\?$/, ''), test]));
  const needed = Object.keys(tests).filter((key) => !key.endsWith('?'));
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
    const entries = Object.entries(value).filter(([, each]) => each !== undefined);
    const keys = new Set(entries.map(([key]) => key));
    return needed.every((key) => keys.has(key)) && entries.every(([key, each]) => known.get(key)?.(each) === true);
  };
}

/** Objects that say by one key what they are, and with it which others they have. */
export function byTag(tag: string, kinds: Readonly<Record<string, Readonly<Record<string, Test>>>>): Test {
  const tests = new Map(Object.entries(kinds).map(([kind, keys]) => [kind, object({ ...keys, [tag]: oneOf(kind) })]));
  return (value) => {
    const kind = (value as Readonly<Record<string, unknown>> | null | undefined)?.[tag];
    return typeof kind === 'string' && tests.get(kind)?.(value) === true;
  };
}
