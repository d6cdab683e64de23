/** The islands that a plan leaves loose, lettered as the pieces of the sheet are. */
import { pieceLetter } from '../../picture/sheet-scene';
import type { PreviewStack } from '../../protocol/index';
import { whyNot } from '../../report/refusal';
import type { LayerPlanState } from './layer-plan-state';
import type { ToldIsland } from './left-islands';

export function toldIslands({ layer, left }: LayerPlanState, stack: PreviewStack | undefined): ToldIsland[] {
  const islands = stack?.layers.find(({ id }) => id === layer)?.islands ?? [];
  return left.map(({ at, outline, ...why }) => {
    // The frame piece is the first.
    const order = islands.findIndex((island) => island.outline === outline);
    return { letter: order < 0 ? '?' : pieceLetter(order + 1), at, outline, sentence: whyNot(why) };
  });
}
