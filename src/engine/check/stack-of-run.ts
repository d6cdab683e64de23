/** The stack of a run: its layers in painting order, and what is measured between them when it is asked for. */
import { limitsOf } from '../../config/limits';
import type { Sheet } from '../../sheet/types';
import { measureSeams } from '../../stack/index';
import { firstsOf, type Stack, type StackLayer, stackOf } from '../../stack/stack';
import type { Answer } from '../cache/cache';
import { type PlacedSheet, seamsNode, stackNode } from '../cache/nodes';
import { type Run, slotOf } from './run';

/** A sheet of a file, and the name that the project has for the file. */
export interface NamedSheet extends PlacedSheet {
  readonly name: string;
}

/** @param placed in painting order */
export function stackFrom(run: Run, placed: readonly NamedSheet[]): Answer<Stack> {
  return run.cache.ask(stackNode, placed, () => {
    const layers = layersOf(placed);
    const sheets = measuresOf(placed);
    const firsts = firstsOf(layers);
    const measure = (slip: number) =>
      run.cache.ask(
        seamsNode,
        { sheets, firsts, slip },
        (previous) =>
          measureSeams(
            layers.map(({ sheet }) => sheet),
            slip,
            previous,
            firsts,
          ),
        slotOf(run, 'stack'),
      ).value.seams;
    return stackOf(layers, measure);
  });
}

/**
 * Makes what was measured between these layers what the next state of the stack is measured from, where it is known:
 * the checks ask for it only where they have not found anything yet.
 */
export function settleSeams(run: Run, placed: readonly NamedSheet[]): void {
  const { slip } = limitsOf(run.config);
  const firsts = firstsOf(layersOf(placed));
  run.cache.settle(seamsNode, { sheets: measuresOf(placed), firsts, slip }, slotOf(run, 'stack'));
}

function layersOf(placed: readonly NamedSheet[]): StackLayer[] {
  return placed.map(({ name, ...each }) => ({ file: name, sheet: sheetAt(each) }));
}

function sheetAt({ file, ordinal }: PlacedSheet): Sheet {
  return file.value.sheets[ordinal] as Sheet;
}

function measuresOf(placed: readonly PlacedSheet[]): number[] {
  return placed.map(({ file, ordinal }) => file.value.origins[ordinal]?.measures ?? 0);
}
