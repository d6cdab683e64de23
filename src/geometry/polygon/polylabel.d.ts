declare module 'polylabel' {
  /** [x, y] of the centre, its distance from the boundary beside it. */
  export default function polylabel(
    polygon: readonly (readonly (readonly [number, number])[])[],
    precision?: number,
  ): [number, number] & { readonly distance: number };
}
