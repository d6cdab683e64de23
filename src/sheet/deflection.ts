/**
 * How far a tongue lifts. A strip clamped at one end under an even load bends at its free end by δ = q L⁴ / (8 E I)
 * (Euler–Bernoulli, any textbook of strength of materials). With q = p b and I = b t³ / 12 its width b drops out:
 * δ = 1.5 p L⁴ / (E t³).
 */
import type { Material } from '../config/material';

/**
 * Pa: an assumption, about what a jet of air at 6 m/s does where it is stopped (½ ρ v²). No measurement stands behind
 * it.
 */
export const SPRAY_PRESSURE = 20;

/** mm: paint creeps under an edge that stands off by more. Common practice, no source. */
export const DEFLECTION_LIMIT = 0.5;

const GRAVITY = 9.81;

/** MPa: the spray and the strip's own weight, as if both bent it the same way. */
export function pressureOn({ density, thickness }: Material): number {
  return (SPRAY_PRESSURE + (density * GRAVITY * thickness) / 1000) / 1e6;
}

/**
 * @param reach free length, in mm
 * @returns mm; the formula holds for small bends, so that beyond a tenth of the reach it says no more than "far"
 */
export function deflectionOf(reach: number, material: Material): number {
  return (1.5 * pressureOn(material) * reach ** 4) / (material.stiffness * material.thickness ** 3);
}

/** mm: a tongue that reaches farther lifts by more than the limit. */
export function maxOverhang(material: Material): number {
  return ((DEFLECTION_LIMIT * material.stiffness * material.thickness ** 3) / (1.5 * pressureOn(material))) ** 0.25;
}
