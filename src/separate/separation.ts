/** What a picture was separated into. */
import type { DrawnLayer } from './outlines';

export interface SeparatedLayer extends DrawnLayer {
  /** For people: "dark blue". */
  readonly name: string;
  /** `#rrggbb` */
  readonly paint: string;
}

export interface SeparatedPixels {
  readonly width: number;
  readonly height: number;
  readonly labels: Uint8Array;
  readonly fine: Uint8Array;
}

export interface Separation {
  /** mm */
  readonly width: number;
  readonly height: number;
  /** First sprayed first. */
  readonly layers: readonly SeparatedLayer[];
  /** `#rrggbb`: what is left unpainted. */
  readonly unpainted: readonly string[];
  /** Mean CIEDE2000 between the picture and its palette. */
  readonly difference: number;
  readonly isDrawing: boolean;
  /** Lines and curves of all borders, each counted once. */
  readonly nodes: number;
  /** mm: how far a curve may run beside the border that it stands for. */
  readonly follow: number;
  /** mm: nothing finer is cut or left standing. */
  readonly detail: number;
  /** Of the whole picture: what was too fine to be cut, and took a neighbour's colour. */
  readonly tooFine: number;
  /** What the borders were drawn from: the label of each pixel, and 1 where it was too fine. Masks have none. */
  readonly pixels?: SeparatedPixels | undefined;
  /** Islands where each colour is cut by itself, and in the order of spraying without those that later paint covers. */
  readonly islands: { readonly alone: number; readonly ordered: number };
}
