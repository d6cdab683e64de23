/** From what the artist has chosen to see to the look that shows it. */

import { printScene } from '../../picture/print-scene';
import type { PictureNeck, Scene } from '../../picture/scene';
import { sheetScene } from '../../picture/sheet-scene';
import { allSheetsScene } from '../../picture/sheets-scene';
import type { PreviewStack } from '../../protocol/index';
import { isSlipped, slipMatrix } from './slip';
import { type BenchState, isLayerShown, layerKeys } from './state';

/** What is measured on demand, and where the picture stands. */
export interface SceneExtras {
  readonly necks: readonly PictureNeck[];
  /** Path data of ground that a slip has laid bare. */
  readonly bare: string;
  /** Width over height of the window. */
  readonly aspect: number;
}

export function benchScene(stack: PreviewStack, state: BenchState, { necks, bare, aspect }: SceneExtras): Scene {
  const isShown = (index: number) => isLayerShown(state, stack, index);
  if (state.mode === 'sheet') return sheetScene(stack, state.sheet, { necks });
  if (state.mode === 'sheets') return allSheetsScene(stack, { isShown, aspect, apart: state.apart });
  const keys = layerKeys(stack);
  const placeOf = (index: number) => {
    const slip = state.slips[keys[index] ?? ''];
    return slip && isSlipped(slip) ? slipMatrix(slip, stack.sheet) : undefined;
  };
  return printScene(stack, {
    ground: groundOf(stack, state),
    opacity: state.opacity,
    isShown,
    placeOf,
    bare,
    marksIslands: true,
    framed: true,
  });
}

/** What the artist chose here, else what the project says. */
export function groundOf(stack: PreviewStack, state: BenchState): string | undefined {
  return state.ground ?? stack.ground;
}
