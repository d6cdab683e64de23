/** What the tests use of libraries that come without types. */
declare module 'd3-contour' {
  interface Contours {
    size(size: [number, number]): Contours;
    smooth(smooth: boolean): Contours;
    /** Polygons with holes, first point again at the end of each ring. */
    contour(values: ArrayLike<number>, threshold: number): { readonly coordinates: [number, number][][][] };
  }
  export function contours(): Contours;
}

declare module 'imagetracerjs' {
  interface ColourValue {
    readonly r: number;
    readonly g: number;
    readonly b: number;
    readonly a: number;
  }
  interface Options {
    readonly pal: readonly ColourValue[];
    readonly [name: string]: unknown;
  }
  const tracer: {
    imagedataToSVG(
      picture: { readonly width: number; readonly height: number; readonly data: ArrayLike<number> },
      options: Options,
    ): string;
  };
  export default tracer;
}
