/** The spray order of a stack that leaves the fewest islands, when those that later paint covers are removed. */
import { defined } from '../../base/defined';
import { lightnessOf } from '../../drawing/style/colour';
import type { Region } from '../../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { boxOfPolygon, offset } from '../../geometry/boolean/index';
import { endsAtEdge } from '../../sheet/sheet-edge';
import type { Piece, Sheet } from '../../sheet/types';
import { openingsAsCut } from '../openings-as-cut';
import { registrationMarks } from '../registration-marks';
import type { StackLayer } from '../stack';
import {
  bestOrder,
  bitsOf,
  costOf,
  MAX_ORDERED_LAYERS,
  movedLayers,
  type Order,
  type OrderQuestion,
} from './best-order';
import { islandsLeft } from './covered-islands';
import { layersAfter, overlapOf, type PaintedLayer } from './print-order';
import { layersIn, type SprayUnit, sprayUnits, unitsWith } from './spray-units';

export { MAX_ORDERED_LAYERS } from './best-order';

export interface SprayOrder {
  /** Numbers of layers in the present order, first sprayed first. */
  readonly order: Order;
  /** The fewest layers that must be moved to get there, in the new order. */
  readonly moved: readonly number[];
  /** All islands there are. */
  readonly islands: number;
  /** Those that are left when the ones that later paint covers are removed: as the order stands, and in the best one. */
  readonly before: number;
  readonly after: number;
}

export interface OrderChoice {
  /** mm: how far a sheet may land from where it should */
  readonly slip: number;
  /**
   * So many islands a lighter paint over a darker one counts, for each pair of layers: it needs more coats (common
   * practice, no source). With 0 it only decides between orders with equally many islands.
   */
  readonly lightOverDark?: number;
}

/** As many as there are bits in a set. */
const MAX_SHEETS = 30;

/** Why no best order is found for so many layers, as the end of a sentence; undefined where it is. */
export function tooManyToOrder(firsts: readonly number[]): string | undefined {
  const most = firsts.length > MAX_SHEETS ? MAX_SHEETS : MAX_ORDERED_LAYERS;
  return firsts.length > MAX_SHEETS || sprayUnits(firsts).length > MAX_ORDERED_LAYERS ? `up to ${most}` : undefined;
}

/**
 * The order with the fewest islands among all that print the same picture outside the slip. The present order stays where
 * no other is better. Sheets of one painted region that follow each other go on doing so, and count as one layer.
 * @param layers in the present order, at most `MAX_ORDERED_LAYERS` besides second sheets
 * @param firsts for each layer the first of those that are one painted region with it; by default each stands alone
 */
export function fewestIslands(
  layers: readonly StackLayer[],
  { slip, lightOverDark = 0 }: OrderChoice,
  firsts: readonly number[] = layers.map((_, layer) => layer),
): SprayOrder {
  if (tooManyToOrder(firsts) !== undefined) throw new RangeError(`More than ${MAX_ORDERED_LAYERS} layers`);
  const stack = layers.map(paintedLayer);
  const after = layersAfter(stack, slip);
  const painted = stack.map((layer) => layer.painted);
  const left = layers.map(({ sheet }, layer) => {
    const islands = islandsOf(sheet).map(({ polygon }) => polygon);
    return islandsLeft(islands, painted, mayFollow(after, layer), slip);
  });
  const islands = (layer: number, later: number): number => defined(left[layer])(later);
  const units = sprayUnits(firsts);
  const best = bestUnits(units, { after, islands, lighter: lighterOver(stack, layers, slip), lightOverDark });
  const present = layers.map((_, layer) => layer);
  const order = best ?? present;
  return {
    order,
    moved: movedLayers(order),
    islands: left.reduce((sum, each) => sum + each(0), 0),
    before: costOf(present, islands),
    after: costOf(order, islands),
  };
}

interface LayerCosts {
  readonly after: readonly number[];
  readonly islands: OrderQuestion['cost'];
  readonly lighter: readonly number[];
  readonly lightOverDark: number;
}

/** Layers in the order that costs least; undefined where that is no less than in the present one. */
function bestUnits(
  units: readonly SprayUnit[],
  { after, islands, lighter, lightOverDark }: LayerCosts,
): Order | undefined {
  const ofUnit = (sets: readonly number[]) =>
    units.map((layers, unit) => {
      const set = layers.reduce((all, layer) => all | defined(sets[layer]), 0);
      return unitsWith(units, set) & ~(1 << unit);
    });
  const unitLighter = ofUnit(lighter);
  const tie = (unit: number, later: number): number => bitsOf(later & defined(unitLighter[unit]));
  const isPlain = units.length === after.length;
  const cost: OrderQuestion['cost'] = (unit, later) => {
    const own = isPlain ? islands(unit, later) : costOf(defined(units[unit]), islands, layersIn(units, later));
    return own + lightOverDark * tie(unit, later);
  };
  const best = bestOrder({ count: units.length, after: ofUnit(after), cost, tie });
  const present = units.map((_, unit) => unit);
  return costOf(best, cost) < costOf(present, cost) ? best.flatMap((unit) => defined(units[unit])) : undefined;
}

/** Without what only comes loose as the sheet has no margin there. */
function islandsOf(sheet: Sheet): Piece[] {
  return sheet.pieces.filter((piece) => piece.island && !endsAtEdge(sheet, piece));
}

function paintedLayer({ sheet }: StackLayer): PaintedLayer {
  // Marks are cut in every sheet, one over the other: which one is seen matters to nobody.
  const marks = registrationMarks(sheet.layer).map(({ box }) => growBox(box, DRAWN_ALIKE + sheet.kerf));
  const painted = openingsAsCut(sheet).filter(
    (opening) => !marks.some((mark) => boxContainsBox(mark, boxOfPolygon(opening))),
  );
  return { painted, paint: sheet.layer.paint };
}

/** All but the layer itself and those that must be sprayed before it. */
function mayFollow(after: readonly number[], layer: number): number {
  return after.reduce((set, later, other) => {
    return other === layer || (later & (1 << layer)) !== 0 ? set : set | (1 << other);
  }, 0);
}

/** For each layer those of a lighter paint that lie on it, or on its islands, farther than the slip. */
function lighterOver(stack: readonly PaintedLayer[], layers: readonly StackLayer[], slip: number): number[] {
  const lightness = stack.map(({ paint }) => lightnessOf(paint));
  return stack.map(({ painted }, dark) => {
    const islands = islandsOf(defined(layers[dark]).sheet);
    const whole: Region = [...painted, ...islands.map(({ polygon }) => polygon)];
    return stack.reduce((set, light, other) => {
      const isLighter = defined(lightness[other]) > defined(lightness[dark]);
      return isLighter && offset(overlapOf(light.painted, whole), -slip / 2).length > 0 ? set | (1 << other) : set;
    }, 0);
  });
}
