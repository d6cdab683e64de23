/** How picture and lists share the room of the bench. */
import type { Size } from './viewport';

export interface Arrangement {
  /** Lists beside the picture; below it in two columns; below it, one at a time. */
  readonly kind: 'beside' | 'columns' | 'tabs';
  /** CSS pixels: width of lists that stand beside the picture, height of a picture that stands over them. */
  readonly listWidth: number;
  readonly pictureHeight: number;
}

/** CSS pixels. Lists are never narrower than this where something stands beside them. */
const LEAST_LIST = 300;
const MOST_LIST = 400;

/** CSS pixels round the picture in its window, above and below together. */
const RIM = 46;

/** Shares of the height that a picture over its lists takes. */
const LEAST_SHARE = 0.4;
const MOST_SHARE = 0.62;

/**
 * Lists stand beside the picture where it comes out no smaller than over them; else below it.
 * @param room what picture and lists have together, in CSS pixels
 * @param aspect width of the picture over its height
 */
export function arrangementFor({ width, height }: Size, aspect: number): Arrangement {
  const listWidth = Math.min(Math.max(width * 0.34, LEAST_LIST), MOST_LIST);
  const whole = width / aspect + RIM;
  const pictureHeight = Math.round(Math.min(Math.max(whole, height * LEAST_SHARE), height * MOST_SHARE));
  const beside = Math.min((width - listWidth) / aspect, height - RIM);
  const above = Math.min(width / aspect, pictureHeight - RIM);
  const kind = width >= 2 * LEAST_LIST && beside >= above ? 'beside' : width >= 2 * LEAST_LIST ? 'columns' : 'tabs';
  return { kind, listWidth: Math.round(listWidth), pictureHeight };
}
