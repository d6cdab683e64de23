/** Masks, as sheets are often handed over: a black and white picture for each colour, black the sheet, white or clear the openings. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import { NothingToSeparate } from './dials';
import { drawLayers } from './outlines';
import type { Picture, SoftLabels } from './raster';
import type { SeparatedLayer, Separation } from './separation';

export interface Mask {
  readonly name: string;
  /** `#rrggbb` */
  readonly paint: string;
  readonly picture: Picture;
}

const SHEET = 0;
const OPENING = 1;

/** Pixels that curves may run beside the border. */
const FOLLOW = 0.5;

/**
 * The masks as layers, first sprayed first. Nothing is cleaned up, and nothing is spread: they are sheets already.
 * @param width mm, of the whole picture; all masks must have the same proportions
 * @param follow mm that a curve may run beside the border
 * @throws NothingToSeparate where a mask has no opening, or is not as large as the first
 */
export function layersFromMasks(masks: readonly Mask[], width: number, follow?: number): Separation {
  const { picture: first } = defined(masks[0]);
  const pitch = width / first.width;
  const height = first.height * pitch;
  const tolerance = follow ?? FOLLOW * pitch;
  let [nodes, islands] = [0, 0];
  const layers = masks.map(({ name, paint, picture }, label): SeparatedLayer => {
    const own = width / picture.width;
    if (Math.abs(picture.height * own - height) > pitch) {
      throw new NothingToSeparate(
        `is ${picture.width} × ${picture.height} pixels, the first one ${first.width} × ${first.height}`,
      );
    }
    const soft = shares(picture);
    if (!soft.labels.includes(OPENING)) throw new NothingToSeparate('has no opening: nothing in it is white or clear');
    const rule = { pitch: own, tolerance, slip: 0, bridge: 0, opening: 0, isDrawing: true };
    const drawn = drawLayers(soft, [OPENING], rule);
    nodes += drawn.nodes;
    const [layer] = drawn.layers;
    islands += defined(layer).islands;
    return { ...defined(layer), label, name, paint };
  });
  return {
    width,
    height,
    layers,
    unpainted: [],
    difference: 0,
    isDrawing: true,
    nodes,
    follow: tolerance,
    detail: pitch,
    tooFine: 0,
    islands: { alone: islands, ordered: islands },
  };
}

/** How open each pixel is: white, or clear. */
function shares({ width, height, data }: Picture): SoftLabels {
  const labels = new Uint8Array(width * height);
  const other = new Uint8Array(width * height);
  const share = new Float32Array(width * height);
  for (let at = 0; at < labels.length; at += 1) {
    if (at % width === 0) checkpoint(width);
    const light = (defined(data[4 * at]) + defined(data[4 * at + 1]) + defined(data[4 * at + 2])) / 765;
    const open = 1 - (1 - light) * (defined(data[4 * at + 3]) / 255);
    labels[at] = open >= 0.5 ? OPENING : SHEET;
    other[at] = open >= 0.5 ? SHEET : OPENING;
    share[at] = Math.max(open, 1 - open);
  }
  return { width, height, labels, other, share };
}
