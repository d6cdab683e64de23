/** The part of maxrects-packer that is used here. Its package names no entry that Node.js could load by its name alone. */
declare module 'maxrects-packer/dist/maxrects-packer.mjs' {
  interface Rectangle {
    readonly width: number;
    readonly height: number;
    readonly data: number;
  }
  export class MaxRectsPacker {
    constructor(
      width: number,
      height: number,
      padding: number,
      options: { smart: boolean; pot: boolean; square: boolean; allowRotation: boolean },
    );
    readonly bins: readonly {
      readonly rects: readonly (Rectangle & { readonly x: number; readonly y: number; readonly rot: boolean })[];
    }[];
    addArray(rectangles: readonly Rectangle[]): void;
  }
}
