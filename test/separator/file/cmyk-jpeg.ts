/** JPEG of four inks, as programs for print write it (ITU-T T.81; the marker of Adobe's Technical Note 5116). */

/** 0..1 of cyan, magenta, yellow and black. */
export type Inks = readonly [number, number, number, number];

const SIDE = 8;

/** Codes of four bits for differences of up to eight bits. */
const DC_CODE_LENGTH = 4;

/** @param blocks rows of blocks of 8 × 8 pixels, each of one colour */
export function cmykJpeg(blocks: readonly (readonly Inks[])[]): Uint8Array {
  const [width, height] = [SIDE * (blocks[0]?.length ?? 0), SIDE * blocks.length];
  const components = [1, 2, 3, 4];
  return Uint8Array.from(
    [
      [0xff, 0xd8],
      // No transform: the channels are the inks, and Adobe's programs write them the other way round.
      segment(0xee, [...ascii('Adobe'), 0, 100, 0, 0, 0, 0, 0]),
      segment(0xdb, [0, ...Array.from({ length: 64 }, () => SIDE)]),
      segment(0xc0, [8, ...word(height), ...word(width), 4, ...components.flatMap((id) => [id, 0x11, 0])]),
      segment(0xc4, [0x00, ...codeLengths(DC_CODE_LENGTH, 9), 0, 1, 2, 3, 4, 5, 6, 7, 8]),
      segment(0xc4, [0x10, ...codeLengths(1, 1), 0]),
      segment(0xda, [4, ...components.flatMap((id) => [id, 0]), 0, 63, 0]),
      scan(blocks),
      [0xff, 0xd9],
    ].flat(),
  );
}

function segment(marker: number, bytes: readonly number[]): number[] {
  return [0xff, marker, ...word(bytes.length + 2), ...bytes];
}

function word(value: number): number[] {
  return [value >> 8, value & 255];
}

function ascii(text: string): number[] {
  return [...text].map((letter) => letter.charCodeAt(0));
}

/** How many codes there are of each length, 1 to 16. */
function codeLengths(length: number, count: number): number[] {
  return Array.from({ length: 16 }, (_, i) => (i + 1 === length ? count : 0));
}

/** For each block and ink the mean's difference from the last one, and that nothing else follows. */
function scan(blocks: readonly (readonly Inks[])[]): number[] {
  const before = [0, 0, 0, 0];
  let bits = '';
  for (const inks of blocks.flat()) {
    inks.forEach((ink, component) => {
      const mean = Math.round(255 * (1 - ink)) - 128;
      const difference = mean - before[component]!;
      before[component] = mean;
      const size = difference === 0 ? 0 : Math.abs(difference).toString(2).length;
      const value = difference < 0 ? difference + 2 ** size - 1 : difference;
      bits +=
        size.toString(2).padStart(DC_CODE_LENGTH, '0') + (size > 0 ? value.toString(2).padStart(size, '0') : '') + '0';
    });
  }
  const bytes = (bits + '1'.repeat((8 - (bits.length % 8)) % 8)).match(/.{8}/g) ?? [];
  return bytes.flatMap((each) => (each === '11111111' ? [255, 0] : [Number.parseInt(each, 2)]));
}
