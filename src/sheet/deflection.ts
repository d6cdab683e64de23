/**
 * What lifts a loose part of a sheet, and how far it may. A strip clamped at one end under an even load bends at its free
 * end by δ = q L⁴ / (8 S_b), whatever its width (Euler–Bernoulli, any textbook of strength of materials).
 */
import { bendingStiffness, sprayPressure, weightPressure } from '../config/bending';
import type { Config } from '../config/types';
import type { Bending } from './lift/index';

/** mm: paint creeps under an edge that stands off by more. Common practice, no source. */
export const DEFLECTION_LIMIT = 0.5;

/** The can's jet and the sheet's own weight, as if both bent it the same way. */
export function bendingOf(config: Config): Bending {
  const load = (sprayPressure(config) + weightPressure(config)) / 1e6;
  return { load, stiffness: bendingStiffness(config) };
}

/** mm: how far the end of a plain strip lifts. */
export function stripLift(reach: number, { load, stiffness }: Bending): number {
  return (load * reach ** 4) / (8 * stiffness);
}

/** mm: a plain strip that reaches farther lifts by more than so many mm. */
export function stripReach(lift: number, { load, stiffness }: Bending): number {
  return ((8 * stiffness * lift) / load) ** 0.25;
}
