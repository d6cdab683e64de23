export const packed: string;
export function words(manifest: { readonly repository?: unknown }, out?: string): string[];
export function pack(folder?: string, out?: string): string;
