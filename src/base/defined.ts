/**
 * Elements of arrays that are known to be there. The type checker holds every `array[i]` for possibly missing; a
 * default such as `?? 0` would turn a wrong index into the origin of the plane, silently.
 */

declare global {
  var tomboloAssertions: boolean | undefined;
}

/**
 * Whether the tests' assertions are made. The tests set the global for the whole process before anything is loaded;
 * bundles are built with `false` in its place, so that nothing is left there of the calls below. That needs this constant
 * in the same module as the function.
 */
export const asserting = globalThis.tomboloAssertions === true;

/**
 * The element itself: `defined(ring[2 * i])`.
 * @throws RangeError in tests, when there is none
 */
export function defined<T>(element: T | undefined): T {
  if (asserting && element === undefined) failMissing();
  return element as T;
}

function failMissing(): never {
  throw new RangeError('There is no element at this index.');
}
