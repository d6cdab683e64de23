/** What the bench's page and the extension say to each other. */
import type { Stack } from '../server/protocol';

export type ToBench =
  | { readonly type: 'stack'; readonly stack: Stack }
  /** What the text at the caret draws, as path data in mm; empty where it draws nothing. */
  | { readonly type: 'mark'; readonly outline: string };

export type FromBench =
  /** The page listens. */
  | { readonly type: 'ready' }
  /** Select this stretch of the document's text. */
  | { readonly type: 'reveal'; readonly uri: string; readonly from: number; readonly to: number }
  /** Make a stencil of the document. */
  | { readonly type: 'begin'; readonly uri: string };
