/** What the page asks its painter for, and what it gets. Plain data: the painter works in a thread of its own. */
import type { Matrix, Point } from '../../geometry/base/curve-types';
import type { Size, Viewport } from '../state/viewport';

export interface PaintJob {
  /** Missing where the pictures are those of the job before. */
  readonly sheets?: readonly PaintedSheet[];
  /** By role; missing where they are those of the job before. */
  readonly styles?: PaintStyles;
  readonly view: PaintView;
}

/** Parts that lie and move together, from the bottom to the top. */
export interface PaintedSheet {
  /** From the parts' own mm to those of the picture. */
  readonly place: Matrix;
  readonly parts: readonly PaintedPart[];
}

export interface PaintedPart {
  /** Which style it has. */
  readonly role: string;
  /** Path data in mm, filled by the even-odd rule; missing where it is that of the same part in the job before. */
  readonly outline?: string;
  readonly fill: string;
  /** 0..1 */
  readonly opacity: number;
  /** The slant of the lines across it, in degrees. */
  readonly hatch?: number;
  /** Lines go only so far inside its edge, in mm; all over it where this is missing. */
  readonly rim?: number;
  /** How far it comes away from its place, in mm. */
  readonly fall?: Point;
}

/** How the style sheet has a role painted. Colours as canvases take them, lengths in CSS pixels. */
export interface PaintStyle {
  /** Instead of the part's own. */
  readonly fill?: string;
  readonly stroke?: string;
  readonly strokeWidth: number;
  readonly strokeOpacity: number;
  /** As in CSS; `none` for none. */
  readonly filter: string;
}

export type PaintStyles = Readonly<Record<string, PaintStyle>>;

export interface PaintView {
  readonly viewport: Viewport;
  /** Of the window, in CSS pixels. */
  readonly size: Size;
  /** CSS pixels that are painted beyond the window on every side, to be there when the picture is shifted. */
  readonly margin: number;
  /** Device pixels to the CSS pixel. */
  readonly ratio: number;
  /** How far what falls has fallen, 0..1. */
  readonly fallen: number;
}

export interface Painting {
  readonly bitmap: ImageBitmap;
  readonly view: PaintView;
}
