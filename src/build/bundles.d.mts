export const root: string;
export const dist: string;
export const names: readonly string[];

export interface BundleSettings {
  readonly outdir?: string;
  readonly minify?: boolean;
}

/** Without writing it; the inputs are paths from the repository's root. */
export function bundleInMemory(
  name: string,
  settings?: BundleSettings,
): Promise<{
  readonly files: readonly { readonly path: string; readonly contents: Uint8Array }[];
  readonly inputs: readonly string[];
}>;
export function bundle(name: string, settings?: BundleSettings): Promise<string>;
export function watch(settings?: BundleSettings): Promise<void>;
export function makeSchema(settings?: BundleSettings): Promise<{ path: string; contents: string }>;
export function writeFiles(files: readonly { readonly path: string; readonly contents: Uint8Array | string }[]): void;
export function copyPages(): void;
export function copyPython(outdir?: string): void;
export function clean(): void;
export function writeRequired(outdir?: string): void;
