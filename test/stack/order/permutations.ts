/** All orders of so many layers. */
export function permutations(count: number): number[][] {
  if (count === 0) return [[]];
  return permutations(count - 1).flatMap((rest) =>
    Array.from({ length: count }, (_, at) => [...rest.slice(0, at), count - 1, ...rest.slice(at)]),
  );
}

/** @param after for each layer those that must come after it, as a bit mask */
export function isAllowed(order: readonly number[], after: readonly number[]): boolean {
  return order.every((layer, at) => order.slice(0, at).every((before) => ((after[layer] ?? 0) & (1 << before)) === 0));
}
