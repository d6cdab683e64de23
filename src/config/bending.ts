/** What bends a sheet and how stiff it is, from what the artist states; else what is usual. */
import { materialOf } from './limits';
import type { Config } from './types';

/** N: the thrust of a spray can, as kitchen scales show it (4 g). Common practice, no source. */
const DEFAULT_THRUST = 0.04;

/** mm: how far off the can is held. Common practice, no source. */
export const DEFAULT_DISTANCE = 200;

/** m/s² */
const GRAVITY = 9.81;

/**
 * Pa: where a free round jet of the thrust M strikes after x metres, its middle presses with 23.4 M / x². From the speed
 * U = 6.06 d U₀ / x in the middle of a jet (S. B. Pope, Turbulent Flows, 2000; from memory), M = ρ U₀² π d² / 4 and
 * ½ ρ U².
 */
export function sprayPressure({ spray }: Pick<Config, 'spray'>): number {
  const { distance = DEFAULT_DISTANCE, thrust = DEFAULT_THRUST } = spray;
  return (23.4 * thrust) / (distance / 1000) ** 2;
}

/** Pa: of the sheet itself, where it lies level. */
export function weightPressure(config: Config): number {
  const { density, thickness } = materialOf(config);
  return (GRAVITY * (config.droop?.grammage ?? density * thickness)) / 1000;
}

/**
 * mN·m, which is N·mm: the bending stiffness of ISO 5628, S_b = E t³ / 12, for each unit of width. As stated (of two ways
 * of the grain the less stiff one), else from the droop of a strip, else from the material's modulus.
 */
export function bendingStiffness(config: Config): number {
  const { thickness, stiffness } = materialOf(config);
  if (config.bendingStiffness !== undefined) return config.bendingStiffness;
  const { droop } = config;
  if (droop)
    return stiffnessFromDroop(droop.length, droop.by, droop.grammage ?? materialOf(config).density * thickness);
  return (stiffness * thickness ** 3) / 12;
}

/**
 * mN·m: of a strip that hangs over the edge of a table, from the bend of a cantilever under its own weight,
 * S_b = g W L⁴ / (8 δ).
 * @param length L, mm that hang over
 * @param by δ, mm that its end hangs lower
 * @param grammage W, g/m²
 */
function stiffnessFromDroop(length: number, by: number, grammage: number): number {
  return (GRAVITY * (grammage / 1e9) * length ** 4) / (8 * by);
}
