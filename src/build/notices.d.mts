/** The folders of the packages that files come from. */
export function packagesOf(inputs: readonly string[]): string[];
export function notices(inputs: readonly string[]): { readonly path: string; readonly contents: string };
