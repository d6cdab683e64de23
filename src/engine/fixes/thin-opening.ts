/** What the fixes of openings that are too narrow have in common. */
import type { Finding } from '../../checks/finding';
import { limitsOf } from '../../config/limits';
import type { Report } from '../../report/report';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { effectiveConfig } from '../check/effective-config';

export interface ThinOpening {
  readonly sheet: Sheet;
  readonly part: ThinPlace;
}

export function thinPartOf({ subject }: Finding): ThinOpening | undefined {
  return subject?.kind === 'thin' ? subject : undefined;
}

/** mm that an opening must be wide as cut. */
export function leastOpening({ settings }: Report): number {
  return limitsOf(effectiveConfig(settings)).opening;
}
