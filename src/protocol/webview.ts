/** What the bench's page and the extension say to each other. */
import type { LayerId } from '../engine/index';

import type { PreviewStack } from './index';
import type { BenchRequest } from './requests';

export type ToBench =
  | { readonly type: 'stack'; readonly stack: PreviewStack }
  /** What the text at the caret draws, as path data in mm, and in which layers; empty where it draws nothing. */
  | { readonly type: 'mark'; readonly outline: string; readonly layers: readonly LayerId[] }
  /** What the server says to a question of that number. */
  | { readonly type: 'answer'; readonly id: number; readonly answer: unknown }
  /** The file that is shown was deleted. */
  | { readonly type: 'gone'; readonly name: string }
  /** The focus is here again, after the text has had it for a change that was asked for from here. */
  | { readonly type: 'focus' }
  /** CSS pixels to the inch of the screen. */
  | { readonly type: 'screen'; readonly pixelsPerInch: number }
  /** Draw what is shown as a picture. */
  | { readonly type: 'draw'; readonly format: PictureFormat };

export type PictureFormat = 'png' | 'svg';

export type FromBench =
  /** The page listens. */
  | { readonly type: 'ready' }
  /** Select this stretch of the document's text. */
  | { readonly type: 'reveal'; readonly uri: string; readonly from: number; readonly to: number }
  /** The artist has measured the screen. */
  | { readonly type: 'screen'; readonly pixelsPerInch: number }
  /** Take back, or do again, the last change that was made from here, as the editor does it in the text. */
  | { readonly type: 'undo' }
  | { readonly type: 'redo' }
  /** Save the documents that are shown. */
  | { readonly type: 'save' }
  /** Make a stencil of the document. */
  | { readonly type: 'begin'; readonly uri: string }
  | { readonly type: 'ask'; readonly id: number; readonly question: BenchRequest }
  /** Stay with the document, or follow the active one again. */
  | { readonly type: 'pin'; readonly pinned: boolean }
  /** The artist wants what is shown as a picture: ask where to, then have it drawn. */
  | { readonly type: 'saveAs' }
  /** The artist wants files for the cutter, or the page that hangs at the wall: ask for the rest, then write them. */
  | { readonly type: 'writeCut' }
  | { readonly type: 'writeJob' }
  /** A picture that was to be drawn; undefined where that failed. */
  | { readonly type: 'picture'; readonly bytes: Uint8Array | undefined }
  /** Give a layer of the stack another place in the painting order. */
  | {
      readonly type: 'reorder';
      readonly uri: string;
      readonly version: number;
      readonly layer: LayerId;
      readonly to: LayerId;
    }
  /** Put the layers into the spray order with the fewest islands, as it was told for this version. */
  | { readonly type: 'bestOrder'; readonly version: number };
