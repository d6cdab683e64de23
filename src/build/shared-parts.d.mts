export interface Graph {
  readonly inputs: Readonly<Record<string, { readonly imports: readonly { readonly path: string }[] }>>;
  readonly outputs: Readonly<
    Record<string, { readonly inputs: Readonly<Record<string, { readonly bytesInOutput: number }>> }>
  >;
}
export function sharedModules(
  graphs: readonly Graph[],
  read: (name: string) => string,
  counts?: (uses: readonly boolean[]) => boolean | undefined,
): string[];
