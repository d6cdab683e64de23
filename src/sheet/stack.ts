/** The sheets of one print in painting order, whichever files they are cut from. Millimetres, y down. */
import type { Sheet } from './sheet';

/** One layer of the stack. All frames have their upper left corner in common. */
export interface StackLayer {
  /** As the project names the file, relative to its `tombolo.json`, with `/`; empty for a file that stands alone. */
  readonly file: string;
  readonly sheet: Sheet;
}

export interface Stack {
  /** First painted first. */
  readonly layers: readonly StackLayer[];
}

/** The stack of a file that stands alone: its own layers, in the order of its text. */
export function stackOfFile(sheets: readonly Sheet[]): Stack {
  return { layers: sheets.map((sheet) => ({ file: '', sheet })) };
}
