/** The sheets of one print in painting order, whichever files they are cut from. Millimetres, y down. */

import type { Sheet } from '../sheet/types';
import { measureSeams, type Seams } from './index';

/** One layer of the stack. All frames have their upper left corner in common. */
export interface StackLayer {
  /** As the project names the file, relative to its `tombolo.json`, with `/`; empty for a file that stands alone. */
  readonly file: string;
  readonly sheet: Sheet;
}

export interface Stack {
  /** First painted first. */
  readonly layers: readonly StackLayer[];
  /**
   * What is to be said about two or more layers together; measured when it is first asked for.
   * @param slip mm: how far a sheet may land from where it should
   */
  seams(slip: number): Seams;
  /** What was measured last, of this stack or of an earlier state of it. */
  cachedSeams(): Seams | undefined;
}

/** @param earlier an earlier state of the stack: what was measured of sheets that are the same is not measured again */
export function stackOf(layers: readonly StackLayer[], earlier?: Stack): Stack {
  let seams = earlier?.cachedSeams();
  let own = false;
  return {
    layers,
    seams(slip) {
      if (!own || seams?.slip !== slip)
        seams = measureSeams(
          layers.map(({ sheet }) => sheet),
          slip,
          seams,
        );
      own = true;
      return seams;
    },
    cachedSeams: () => seams,
  };
}

/** The stack of a file that stands alone: its own layers, in the order of its text. */
export function stackOfFile(sheets: readonly Sheet[], earlier?: Stack): Stack {
  return stackOf(
    sheets.map((sheet) => ({ file: '', sheet })),
    earlier,
  );
}
