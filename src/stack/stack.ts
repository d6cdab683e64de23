/** The sheets of one print in painting order, whichever files they are cut from. Millimetres, y down. */

import { paintedRegions } from '../sheet/layer/partner';
import type { Sheet } from '../sheet/types';
import { measureSeams, type Seams } from './index';
import { LaterPaint } from './later-paint';

/** One layer of the stack. All frames have their upper left corner in common. */
export interface StackLayer {
  /** As the project names the file, relative to its `tombolo.json`, with `/`; empty for a file that stands alone. */
  readonly file: string;
  readonly sheet: Sheet;
}

export interface Stack {
  readonly layers: readonly StackLayer[];
  /** For each layer the first of those that are one painted region with it: its own number where it stands alone. */
  readonly firsts: readonly number[];
  /**
   * What is to be said about two or more layers together; measured when it is first asked for.
   * @param slip mm: how far a sheet may land from where it should
   */
  seams(slip: number): Seams;
  /** The same, only if that slip was the last one asked for. */
  knownSeams(slip: number): Seams | undefined;
  /** What later layers paint over; made ready when it is first asked for. */
  readonly laterPaint: LaterPaint;
}

/** @param measure measures the seams of these layers for a slip in mm */
export function stackOf(layers: readonly StackLayer[], measure = measureAnew(layers)): Stack {
  let last: Seams | undefined;
  let paint: LaterPaint | undefined;
  const knownSeams = (slip: number) => (last?.slip === slip ? last : undefined);
  return {
    layers,
    firsts: firstsOf(layers),
    seams: (slip) => knownSeams(slip) ?? (last = measure(slip)),
    knownSeams,
    get laterPaint() {
      return (paint ??= new LaterPaint(layers.map(({ sheet }) => sheet)));
    },
  };
}

function measureAnew(layers: readonly StackLayer[]): (slip: number) => Seams {
  const sheets = layers.map(({ sheet }) => sheet);
  return (slip) => measureSeams(sheets, slip, undefined, firstsOf(layers)).seams;
}

/** For each layer the first of those that are one painted region with it. */
export function firstsOf(layers: readonly StackLayer[]): readonly number[] {
  return paintedRegions(layers.map(({ sheet }) => sheet.layer));
}

/** The stack of a file that stands alone: its own layers, in the order of its text. */
export function stackOfFile(sheets: readonly Sheet[]): Stack {
  return stackOf(sheets.map((sheet) => ({ file: '', sheet })));
}
