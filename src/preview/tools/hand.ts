/** What presses, drags and keys on the picture do, whatever is in hand. Places are in the window. */
import type { Point } from '../../geometry/base/curve-types';
import type { KeyPress } from './bridge-gestures';

export interface Hand {
  /** Takes hold of what is there. @param alt whether Alt is held. @returns whether the drag is for it */
  grip(at: Point, alt: boolean): boolean;
  drag(at: Point, alt: boolean): void;
  /** Alt was pressed or let go during a drag. */
  hold(alt: boolean): void;
  letGo(): void;
  /** What a press there would take hold of. */
  over(at: Point): 'move' | 'stretch' | undefined;
  /** A click, or Enter at the crosshair. */
  use(at: Point): Promise<void>;
  /** The pointer rests there. */
  hover(at: Point): Promise<void>;
  /** The pointer has left the picture. */
  leave(): void;
  /** @returns whether the key was meant for the hand */
  key(press: KeyPress): boolean;
  /** @returns whether there was anything to take away */
  escape(): boolean;
  /** @param focusPicture gives the focus to the picture */
  focusesOn(focusPicture: () => void): void;
}
