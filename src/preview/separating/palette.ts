/** What the artist does to the palette: from dials to dials. Colours are `#rrggbb`. */
import type { MergedColours } from '../../config/types';
import type { PictureDials, ShownLayer } from '../../protocol/separating';

export const MOST_COLOURS = 24;

export function isFixed({ paints }: PictureDials, paint: string): boolean {
  return paints.includes(paint);
}

export function withFixed(dials: PictureDials, paint: string, fixed: boolean): PictureDials {
  const others = dials.paints.filter((each) => each !== paint);
  return { ...dials, paints: fixed ? [...others, paint] : others };
}

/** Another colour in the place of one: a paint that the artist has, and so never changed. */
export function withPaint(dials: PictureDials, before: string, after: string): PictureDials {
  if (before === after) return dials;
  const renamed = (each: string): string => (each === before ? after : each);
  return {
    ...dials,
    paints: [...new Set([...dials.paints.filter((each) => each !== before), after])],
    order: [...new Set(dials.order.map(renamed))],
    merged: dials.merged.map(([from, into]): MergedColours => [from, renamed(into)]),
  };
}

export function withAdded(dials: PictureDials, paint: string): PictureDials {
  if (dials.paints.includes(paint) || dials.colours >= MOST_COLOURS) return dials;
  return { ...dials, colours: dials.colours + 1, paints: [...dials.paints, paint] };
}

/** What has one colour is sprayed in the paint of another. */
export function withMerged(dials: PictureDials, from: string, into: string): PictureDials {
  const earlier = dials.merged.map(([first, second]): MergedColours => [first, second === from ? into : second]);
  return {
    ...dials,
    colours: Math.max(1, dials.colours - 1),
    paints: [...new Set([...dials.paints.filter((each) => each !== from), into])],
    order: dials.order.filter((each) => each !== from),
    merged: [...earlier.filter(([first]) => first !== from), [from, into]],
  };
}

export function withoutMerged(dials: PictureDials, from: string): PictureDials {
  return { ...dials, colours: dials.colours + 1, merged: dials.merged.filter(([first]) => first !== from) };
}

export function withLeftOut(dials: PictureDials, paint: string): PictureDials {
  return {
    ...dials,
    colours: Math.max(1, dials.colours - 1),
    paints: dials.paints.filter((each) => each !== paint),
    order: dials.order.filter((each) => each !== paint),
    leaveOut: [...dials.leaveOut, paint],
  };
}

/** @param paint one of the colours left out, or the ground */
export function withPaintedAgain(dials: PictureDials, paint: string): PictureDials {
  const colours = dials.colours + 1;
  if (dials.ground === paint) return { ...dials, colours, ground: undefined };
  return { ...dials, colours, leaveOut: dials.leaveOut.filter((each) => each !== paint) };
}

/** @param by places earlier (negative) or later */
export function withMoved(
  dials: PictureDials,
  layers: readonly Pick<ShownLayer, 'paint'>[],
  paint: string,
  by: number,
): PictureDials {
  const order = layers.map((layer) => layer.paint);
  const from = order.indexOf(paint);
  const to = Math.max(0, Math.min(order.length - 1, from + by));
  if (from < 0 || from === to) return dials;
  order.splice(from, 1);
  order.splice(to, 0, paint);
  return { ...dials, order };
}
