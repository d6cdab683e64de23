/** What the bench's page asks of the editor round it, and what that keeps of the page. */
import type { PreviewStack } from '../protocol/index';
import type { BenchRequests } from './state/requests';
import type { BenchState } from './state/state';
import type { Viewport } from './state/viewport';

/** What is kept when the panel is hidden or the editor starts anew. */
export interface SavedPage {
  readonly uri: string | undefined;
  readonly state: BenchState;
  readonly view: Viewport | undefined;
  /** Whether the panel stays with its file. */
  readonly pinned?: boolean;
}

export interface PageHost {
  readonly requests: BenchRequests;
  saveState(kept: SavedPage): void;
  reveal(uri: string, from: number, to: number): void;
  begin(uri: string): void;
  pin(pinned: boolean): void;
  saveAs(): void;
  /** Files for the cutter; the page that hangs at the wall. */
  writeCut(): void;
  writeJob(): void;
  /** Takes back the last change of the text, or does it again. */
  undo(again: boolean): void;
  /** Saves the documents that are shown. */
  save(): void;
  /** Keeps how many CSS pixels the screen has to the inch. */
  screen(pixelsPerInch: number): void;
  /** Give a layer another place in the painting order. */
  reorder(stack: PreviewStack, layer: number, to: number): void;
  /** Put the layers into the order with the fewest islands, as it was told for this version of the document. */
  bestOrder(version: number): void;
}
