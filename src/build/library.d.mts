/** The library's package.json. */
export function libraryManifest(manifest: object): Record<string, unknown>;
export function begin(): void;
export function end(): void;
/** The rolled-up declarations, as path and contents. */
export function declarations(): Promise<{ path: string; contents: string }[]>;
