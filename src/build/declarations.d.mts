export function declarations(): { readonly path: string; readonly contents: string }[];
