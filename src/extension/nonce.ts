/** What nobody can guess. */

/** @returns so many random bytes, as hexadecimal digits */
export function randomHex(bytes: number): string {
  const random = crypto.getRandomValues(new Uint8Array(bytes));
  return [...random].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
