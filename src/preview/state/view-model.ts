/** From what the artist has chosen to see to the look that shows it. */
import type { Look, PictureNeck } from '../../picture/look';
import { printLook } from '../../picture/print-look';
import { sheetLook } from '../../picture/sheet-look';
import { sheetsLook } from '../../picture/sheets-look';
import type { Stack } from '../../protocol';
import { isLayerShown, layerKeys, type BenchState } from './state';
import { isSlipped, slipMatrix } from './slip';

/** What is measured on demand, and where the picture stands. */
export interface LookExtras {
  readonly necks: readonly PictureNeck[];
  /** Path data of ground that a slip has laid bare. */
  readonly bare: string;
  /** Width over height of the window. */
  readonly aspect: number;
}

export function benchLook(stack: Stack, state: BenchState, { necks, bare, aspect }: LookExtras): Look {
  const isShown = (index: number) => isLayerShown(state, stack, index);
  if (state.mode === 'sheet') return sheetLook(stack, state.sheet, { necks });
  if (state.mode === 'sheets') return sheetsLook(stack, { isShown, aspect, apart: state.apart });
  const keys = layerKeys(stack);
  const placeOf = (index: number) => {
    const slip = state.slips[keys[index] ?? ''];
    return slip && isSlipped(slip) ? slipMatrix(slip, stack.sheet) : undefined;
  };
  return printLook(stack, {
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
export function groundOf(stack: Stack, state: BenchState): string | undefined {
  return state.ground ?? stack.ground;
}
