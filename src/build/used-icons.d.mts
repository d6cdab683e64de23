export function iconsIn(root: string, names: readonly string[]): string[];
export function codesOf(css: string): Map<string, number>;
export function partOfFont(bytes: Uint8Array, codes: readonly number[]): Uint8Array;
