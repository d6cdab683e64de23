export function bundled(
  entry: string,
  defines?: Readonly<Record<string, string>>,
): Promise<{ readonly file: string; readonly remove: () => void }>;
