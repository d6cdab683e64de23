/** Pictures as the separation knows them: rows of pixels, the first row at the top. */

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and alpha (0..255, sRGB, not premultiplied) of each pixel. */
  readonly data: Uint8Array | Uint8ClampedArray;
}

/** 0..255 each, sRGB. */
export type Rgb = readonly [number, number, number];

/** One number of a colour for each pixel. */
export interface LabelMap {
  readonly width: number;
  readonly height: number;
  readonly labels: Uint8Array;
}

/** The labels that some pixel has, ascending. */
export function labelsIn({ labels }: LabelMap): number[] {
  const seen = new Uint8Array(256);
  for (const label of labels) seen[label] = 1;
  return [...seen.keys()].filter((label) => seen[label] === 1);
}

/** Labels that know how much of each pixel is theirs: what lies between two colours is a mixture of both. */
export interface SoftLabels extends LabelMap {
  /** The second colour of each pixel. */
  readonly other: Uint8Array;
  /** 0.5..1: how much of the pixel has its own label; the rest has the other. */
  readonly share: Float32Array;
}

/** Labels of whole pixels. */
export function hardLabels({ width, height, labels }: LabelMap): SoftLabels {
  return {
    width,
    height,
    labels,
    other: new Uint8Array(labels.length),
    share: new Float32Array(labels.length).fill(1),
  };
}
