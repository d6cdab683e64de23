/** In which order colours are sprayed: the one that leaves the fewest islands, when those under later paint are cut away. */
import { defined } from '../../base/defined';
import { bestOrder, bitsOf, costOf, MAX_ORDERED_LAYERS } from '../../stack/order/best-order';
import { labOf } from '../colour/difference';
import { type LabelMap, labelsIn, type Rgb } from '../raster';
import { type Hole, holesOf } from './holes';

export interface PaintingOrder {
  /** Labels, first sprayed first; those that are not painted are not among them. */
  readonly order: readonly number[];
  /** Islands where each colour is cut by itself, and in this order without those that later paint covers. */
  readonly alone: number;
  readonly ordered: number;
}

export interface OrderWish {
  /** Labels that are left unpainted. */
  readonly unpainted: ReadonlySet<number>;
  /** A label that is to be sprayed last, as an outline over all others. */
  readonly last?: number | undefined;
  /** Labels in the order that the artist has chosen for them; the others are put where they are best. */
  readonly order?: readonly number[] | undefined;
}

export function paintingOrder(map: LabelMap, colours: readonly Rgb[], wish: OrderWish): PaintingOrder {
  const painted = labelsIn(map).filter((label) => label < colours.length && !wish.unpainted.has(label));
  const holes = holesOf(map, colours.length);
  const cost = (layer: number, later: number): number => {
    const own = defined(holes[defined(painted[layer])]);
    return own.filter((hole) => !isCovered(hole, painted, later)).length;
  };
  const order = ordered(painted, colours, cost, wish);
  return {
    order: order.map((place) => defined(painted[place])),
    alone: painted.reduce((sum, label) => sum + defined(holes[label]).length, 0),
    ordered: costOf(order, cost),
  };
}

function isCovered({ labels }: Hole, painted: readonly number[], later: number): boolean {
  return [...labels].every((label) => {
    const place = painted.indexOf(label);
    return place >= 0 && (later & (1 << place)) !== 0;
  });
}

/** Of orders with equally many islands the one with the fewest light colours over dark ones, which need more coats. */
function ordered(
  painted: readonly number[],
  colours: readonly Rgb[],
  cost: (layer: number, later: number) => number,
  { last, order: chosen = [] }: OrderWish,
): readonly number[] {
  const chain = chosen.map((label) => painted.indexOf(label)).filter((place) => place >= 0);
  const lightness = painted.map((label) => labOf(defined(colours[label]))[0]);
  const byLightness = [...painted.keys()].sort((a, b) => defined(lightness[b]) - defined(lightness[a]));
  if (painted.length > MAX_ORDERED_LAYERS) return [...chain, ...byLightness.filter((place) => !chain.includes(place))];
  const lighter = lightness.map((own) => lightness.reduce((set, l, place) => (l > own ? set | (1 << place) : set), 0));
  const outline = last === undefined || chosen.includes(last) ? -1 : painted.indexOf(last);
  const after = painted.map((_, place) => (outline >= 0 && place !== outline ? 1 << outline : 0));
  chain.forEach((place, i) => {
    for (const later of chain.slice(i + 1)) after[place] = defined(after[place]) | (1 << later);
  });
  return bestOrder({
    count: painted.length,
    after,
    cost,
    tie: (layer, later) => bitsOf(later & defined(lighter[layer])),
  });
}
