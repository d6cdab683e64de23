/** The dials of the panel as the separation and `tombolo.json` have them, and back. */
import type { Config } from '../../config/types';
import type { PictureDials } from '../../protocol/separating';
import type { Dials } from '../../separate/index';
import { coloursOf, dialsFrom, type KeptDials, statedDials } from '../project/dials';

/** mm: a postcard's longer side. */
const USUAL_WIDTH = 148;

/** The dials as they were left, or as they usually are. */
export function dialsToShow({ width = USUAL_WIDTH, ground, separate }: Config): PictureDials {
  const kept: KeptDials = separate ?? {};
  const { paints = [], detail, follow, leaveOut = [], outline = false, merged = [], order = [] } = kept;
  return {
    width,
    colours: coloursOf(kept),
    paints,
    detail,
    follow,
    ground,
    leaveOut,
    outline,
    merged,
    order,
    bridges: true,
  };
}

export function dialsOf(dials: PictureDials, config: Config): Dials {
  return dialsFrom(statedDials(dials), dials.width, dials.ground, config);
}
