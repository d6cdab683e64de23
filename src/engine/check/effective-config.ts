/** The configuration that settings amount to, and whether two of them measure alike. */

import { type Config, DEFAULT_CONFIG } from '../../config/types';
import type { Settings } from '../../report/report';

/** The configuration with the settings' overrides worked in. */
export function effectiveConfig({ config = DEFAULT_CONFIG, width, height, kerf }: Settings): Config {
  const sized = width === undefined && height === undefined ? config : { ...config, width, height };
  return kerf === undefined ? sized : { ...sized, kerf, compensated: false };
}

/**
 * Whether what was measured and found under one configuration holds under the other. What only sorts the findings, and
 * the ground, which nothing is measured on, may differ; so may the layers, which are compared file by file.
 * Configurations are plain data, always with the same keys in the same order.
 */
export function measuresAlike(a: Config, b: Config): boolean {
  return a === b || JSON.stringify(measuringPart(a)) === JSON.stringify(measuringPart(b));
}

function measuringPart(config: Config): object {
  const { layers: _layers, checks: _checks, accept: _accept, baseline: _baseline, ground: _ground, ...rest } = config;
  return rest;
}
