/** The narrow places of a sheet that its picture gives the measure of. */

import { limitsOf } from '../config/limits';
import { type Config, DEFAULT_CONFIG } from '../config/types';
import { findThinPlaces } from '../sheet/thin-places';
import type { Sheet } from '../sheet/types';
import type { PictureNeck } from './scene';

/** Necks up to so many times the limit are measured: wider ones are no ties but sheet. */
const SHOWN_LIMITS = 2.5;

/** Those within the limits too, in mm as cut. */
export function necksOf({ material, kerf }: Sheet, config: Config = DEFAULT_CONFIG): PictureNeck[] {
  const places = findThinPlaces(material, limitsOf(config).bridge * SHOWN_LIMITS, kerf);
  return places.filter(({ kind }) => kind === 'neck').map(({ cutWidth, from, to }) => ({ width: cutWidth, from, to }));
}
