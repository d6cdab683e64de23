/** What is said of a separation: now, else in `tombolo.json`, else what is usual. */
import { limitsOf } from '../../config/limits';
import type { Config, LeftOutBox, SeparateSettings } from '../../config/types';
import type { Dials } from '../../separate/index';

/** What is said now; what is missing is taken from before. Lengths in mm. */
export interface DialWishes {
  readonly colours?: number | undefined;
  readonly paints?: readonly string[] | undefined;
  readonly detail?: number | undefined;
  readonly follow?: number | undefined;
  readonly leaveOut?: readonly (string | LeftOutBox)[] | undefined;
  readonly outline?: boolean | undefined;
  readonly merged?: SeparateSettings['merged'] | undefined;
  readonly order?: readonly string[] | undefined;
}

export type KeptDials = Omit<SeparateSettings, 'files' | 'picture'>;

const USUAL_COLOURS = 4;

/** The dials that are kept: what was said, now or before. */
export function keptDials(wishes: DialWishes, before: SeparateSettings | undefined): KeptDials {
  // Paints that are named anew say how many colours there are, as long as nothing else does.
  const colours = wishes.colours ?? (wishes.paints ? undefined : before?.colours);
  return statedDials({ ...before, ...without(wishes), colours });
}

/** Without what has its usual value, and what is no dial. */
export function statedDials(wishes: DialWishes): KeptDials {
  const { colours, paints, detail, follow, leaveOut, outline, merged, order } = wishes;
  return {
    ...(colours !== undefined && { colours }),
    ...(paints && paints.length > 0 && { paints }),
    ...(detail !== undefined && { detail }),
    ...(follow !== undefined && { follow }),
    ...(leaveOut && leaveOut.length > 0 && { leaveOut }),
    ...(outline && { outline }),
    ...(merged && merged.length > 0 && { merged }),
    ...(order && order.length > 0 && { order }),
  };
}

function without(wishes: DialWishes): DialWishes {
  return Object.fromEntries(Object.entries(wishes).filter(([, value]) => value !== undefined));
}

/** How many paints: as many as were named, where nothing else is said. */
export function coloursOf({ colours, paints = [] }: KeptDials): number {
  return colours ?? (paints.length > 0 ? paints.length : USUAL_COLOURS);
}

/**
 * @param width mm
 * @param ground `#rrggbb`
 */
export function dialsFrom(kept: KeptDials, width: number, ground: string | undefined, config: Config): Dials {
  const { bridge, opening, slip } = limitsOf(config);
  const { paints = [], detail, follow, leaveOut = [], outline, merged, order } = kept;
  return {
    width,
    colours: coloursOf(kept),
    paints,
    detail,
    follow,
    bridge,
    opening,
    slip,
    ground,
    leaveOut: leaveOut.map((each) => (typeof each === 'string' ? each : boxOf(each))),
    outline: outline === true,
    merged,
    order,
  };
}

function boxOf([x, y, width, height]: LeftOutBox) {
  return { minX: x, minY: y, maxX: x + width, maxY: y + height };
}
