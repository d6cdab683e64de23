/** What is said of a separation: on the command line, else in `tombolo.json`, else what is usual. */
import { limitsOf } from '../../config/limits';
import type { Config, LeftOutBox, SeparateSettings } from '../../config/types';
import type { Dials } from '../../separate/index';
import { Failure } from '../failure';

/** Options of the command line. Lengths in mm. */
export interface DialOptions {
  readonly width?: number;
  readonly colours?: number;
  readonly paints?: readonly string[];
  readonly detail?: number;
  readonly follow?: number;
  readonly ground?: string;
  readonly leaveOut?: readonly (string | LeftOutBox)[];
  readonly outline?: boolean;
}

const USUAL_COLOURS = 4;

/** The dials that are kept: what was said, now or before. */
export function keptDials(options: DialOptions, before: SeparateSettings | undefined): Omit<SeparateSettings, 'files'> {
  const paints = options.paints ?? before?.paints;
  // Paints that are named anew say how many colours there are, as long as nothing else does.
  const colours = options.colours ?? (options.paints ? undefined : before?.colours);
  const detail = options.detail ?? before?.detail;
  const follow = options.follow ?? before?.follow;
  const leaveOut = options.leaveOut ?? before?.leaveOut;
  const outline = options.outline ?? before?.outline;
  return {
    ...(colours !== undefined && { colours }),
    ...(paints && paints.length > 0 && { paints }),
    ...(detail !== undefined && { detail }),
    ...(follow !== undefined && { follow }),
    ...(leaveOut && leaveOut.length > 0 && { leaveOut }),
    ...(outline && { outline }),
  };
}

/** @throws Failure where nothing says how wide the picture becomes */
export function dialsFrom(kept: Omit<SeparateSettings, 'files'>, options: DialOptions, config: Config): Dials {
  const width = options.width ?? config.width;
  if (width === undefined) throw new Failure('say how wide the print becomes, such as --width 148mm');
  const { bridge, opening, slip } = limitsOf(config);
  const paints = kept.paints ?? [];
  const ground = options.ground ?? config.ground;
  return {
    width,
    colours: kept.colours ?? (paints.length > 0 ? paints.length : USUAL_COLOURS),
    paints,
    ...(kept.detail !== undefined && { detail: kept.detail }),
    ...(kept.follow !== undefined && { follow: kept.follow }),
    bridge,
    opening,
    slip,
    ...(ground !== undefined && { ground }),
    leaveOut: (kept.leaveOut ?? []).map((each) => (typeof each === 'string' ? each : boxOf(each))),
    outline: kept.outline === true,
  };
}

function boxOf([x, y, width, height]: LeftOutBox) {
  return { minX: x, minY: y, maxX: x + width, maxY: y + height };
}
