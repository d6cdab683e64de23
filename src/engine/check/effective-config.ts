/** The configuration that settings amount to, and the part of it that decides what is measured. */

import { type Config, DEFAULT_CONFIG } from '../../config/types';
import type { Settings } from '../../report/report';

/** The configuration with the settings' overrides worked in. */
export function effectiveConfig({ config = DEFAULT_CONFIG, width, height, kerf }: Settings): Config {
  const sized =
    width === undefined && height === undefined ? config : { ...config, width, height, sizeOverridden: true as const };
  return kerf === undefined ? sized : { ...sized, kerf, compensated: false };
}

/**
 * What of a configuration decides what is measured and found: all but what only sorts the findings, the ground and the
 * paint, which nothing is measured on, and the layers, which are compared file by file. Configurations are plain data,
 * always with the same keys in the same order.
 */
export function measuringPart(config: Config): object {
  const {
    layers: _layers,
    checks: _checks,
    accept: _accept,
    acceptedIn: _acceptedIn,
    baseline: _baseline,
    ...unsorted
  } = config;
  const { ground: _ground, ignore: _ignore, paint: _paint, ...rest } = unsorted;
  return rest;
}
