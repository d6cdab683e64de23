/** Screenshots to a GIF that plays for ever. */
import { applyPalette, GIFEncoder, quantize } from 'gifenc';
import { type Part, partOf, pixelsOf } from './screenshot';

export interface Frame {
  readonly png: Uint8Array;
  /** Milliseconds */
  readonly delay: number;
}

/**
 * Of each frame only what has changed is written: the rest is see-through.
 * @param colours at most 256, what is see-through counted
 * @param part of the frames, unless it is all of them
 */
export function movingPicture(frames: readonly Frame[], colours = 256, part?: Part): Uint8Array {
  const pictures = frames.map(({ png }) => (part ? partOf(pixelsOf(png), part) : pixelsOf(png)));
  const palette = quantize(sample(pictures.map(({ data }) => data)), colours - 1);
  const unchanged = palette.length;
  const encoder = GIFEncoder();
  let before: Uint8Array | undefined;
  pictures.forEach(({ data, width, height }, order) => {
    const index = applyPalette(data, palette);
    const written = before ? index.map((colour, at) => (colour === before?.[at] ? unchanged : colour)) : index;
    encoder.writeFrame(written, width, height, {
      ...(order === 0 && { palette: [...palette, [0, 0, 0]], repeat: 0 }),
      ...(before && { transparent: true, transparentIndex: unchanged }),
      delay: frames[order]?.delay ?? 0,
      dispose: 1,
    });
    before = index;
  });
  encoder.finish();
  return encoder.bytes();
}

/** Every seventh pixel of all pictures: enough to choose colours by. */
function sample(pictures: readonly Uint8Array[]): Uint8Array {
  const pixels = pictures.flatMap((data) => {
    const taken: number[] = [];
    for (let at = 0; at + 3 < data.length; at += 28) taken.push(data[at]!, data[at + 1]!, data[at + 2]!, data[at + 3]!);
    return taken;
  });
  return Uint8Array.from(pixels);
}
