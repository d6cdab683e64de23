/** What the artist says of a separation. Lengths in mm at the size the sheets are cut. */
import type { Box } from '../geometry/base/polygon-types';

export interface Dials {
  /** How wide the picture becomes. */
  readonly width: number;
  /** How many paints. */
  readonly colours: number;
  /** Paints that are at hand, `#rrggbb`; they are among the colours and never change. */
  readonly paints: readonly string[];
  /** Nothing finer than this is cut or left standing; where nothing is said, what the sheet bears, of photos half as much again. */
  readonly detail?: number | undefined;
  /** How far a curve may run beside the border that it stands for; half a pixel of the picture where nothing is said. */
  readonly follow?: number | undefined;
  /** The least widths of a strip of sheet and of an opening. */
  readonly bridge: number;
  readonly opening: number;
  /** How far a sheet may land off its place: so far earlier colours reach under later ones. */
  readonly slip: number;
  /** The colour that is painted on, `#rrggbb`: it is left unpainted, and shows where the picture is clear. */
  readonly ground?: string | undefined;
  /** What else is left unpainted: colours, and rectangles from the upper left corner of the print. */
  readonly leaveOut: readonly (string | Box)[];
  /** Whether the darkest colour is sprayed last, as an outline over all others. */
  readonly outline: boolean;
  /** Colours that are sprayed in the paint of another one: from which, into which, `#rrggbb`. */
  readonly merged?: readonly (readonly [from: string, into: string])[] | undefined;
  /** Paints in the order in which they are sprayed, `#rrggbb`; the others come where they make the fewest islands. */
  readonly order?: readonly string[] | undefined;
}

/** What a separation is at. */
export type Step = 'palette' | 'areas' | 'order' | 'outlines';

/** The picture gives nothing that could be sprayed. Its message is a clause that follows the picture's name. */
export class NothingToSeparate extends Error {
  override readonly name = 'NothingToSeparate';
}
