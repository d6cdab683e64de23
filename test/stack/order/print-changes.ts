/** The print of two orders beside each other, as pixels of an independent renderer. */
import { setImmediate } from 'node:timers/promises';
import { renderText } from '../../outside/paint';
import { WIDTH } from './made-stacks';

/** Pixels per mm. */
const SCALE = 10;

/** What a disc or an edge in pixels may be off by. */
const ROUNDING = 2;

/**
 * Pixels whose colour is another one, though not both colours are near: the old one still seen in the new picture, the new
 * one seen in the old picture, within `slip` mm.
 */
export async function farChanges(before: string, after: string, slip: number): Promise<number> {
  const [old, now] = [coloursOf(before), coloursOf(after)];
  // The renderer's memory is freed only when the event loop turns.
  await setImmediate();
  const reach = slip * SCALE + ROUNDING;
  let far = 0;
  old.colours.forEach((colour, pixel) => {
    const instead = now.colours[pixel] as number;
    if (instead === colour) return;
    if (!isNear(now, pixel, colour, reach) || !isNear(old, pixel, instead, reach)) far += 1;
  });
  return far;
}

interface Colours {
  readonly width: number;
  readonly colours: Uint32Array;
}

function coloursOf(svg: string): Colours {
  const { width, pixels } = renderText(svg, WIDTH * SCALE);
  return { width, colours: new Uint32Array(pixels.buffer.slice(0)) };
}

function isNear({ width, colours }: Colours, pixel: number, colour: number, reach: number): boolean {
  const [x, y] = [pixel % width, Math.floor(pixel / width)];
  const far = Math.floor(reach);
  for (let dy = -far; dy <= far; dy += 1) {
    for (let dx = -far; dx <= far; dx += 1) {
      if (dx * dx + dy * dy > reach * reach || x + dx < 0 || x + dx >= width) continue;
      if (colours[(y + dy) * width + x + dx] === colour) return true;
    }
  }
  return false;
}
