/** What the artist has chosen to see. */
import type { Stack, StackFinding } from '../server/protocol';

export interface BenchState {
  readonly mode: 'stack' | 'sheet';
  /** The layer whose sheet is shown in `sheet` mode. */
  readonly sheet: number;
  /** Names of layers that are switched off in `stack` mode. */
  readonly hidden: readonly string[];
  /** Index of the finding that was last chosen. */
  readonly selected: number | undefined;
}

export const FIRST_STATE: BenchState = { mode: 'stack', sheet: 0, hidden: [], selected: undefined };

export function isLayerShown({ mode, sheet, hidden }: BenchState, stack: Stack, index: number): boolean {
  if (mode === 'sheet') return index === sheet;
  return !hidden.includes(stack.layers[index]?.name ?? '');
}

/** Findings about the whole file always show. */
export function isFindingShown(state: BenchState, stack: Stack, { layer }: StackFinding): boolean {
  return layer === undefined || isLayerShown(state, stack, layer);
}

/**
 * The state for a newer stack. It may have fewer layers; where the text has changed, its findings are others.
 */
export function carryOver(state: BenchState, before: Stack | undefined, stack: Stack): BenchState {
  const last = Math.max(stack.layers.length - 1, 0);
  const selected = before?.version === stack.version ? state.selected : undefined;
  return { ...state, sheet: Math.min(state.sheet, last), selected };
}
