/** How wide a bridge is: never narrower than asked for, wider where it is long or holds much. */
import { DEFLECTION_LIMIT } from '../../sheet/deflection';
import type { Bending } from '../../sheet/lift/index';
import { WEIGHTS } from './search/weights';

export interface WidthRule {
  /** mm as drawn: the least width. */
  readonly width: number;
  readonly kerf: number;
  readonly bending: Bending;
  /** As wide as that, whatever its length. */
  readonly exact: boolean;
}

/**
 * mm as drawn. Against a push in the sheet's plane its length counts (`slenderness`); against the load across it, that its
 * end lifts no farther than a loose tongue may: F L³ / (12 S_b w), both ends clamped (Euler–Bernoulli, any textbook of
 * strength of materials).
 * @param held mm² of material that hang on it
 */
export function bridgeWidth(length: number, held: number, { width, kerf, bending, exact }: WidthRule): number {
  if (exact) return width;
  const least = width - kerf;
  const steady = length / WEIGHTS.slenderness.value;
  const stiff = (bending.load * held * length ** 3) / (12 * bending.stiffness * DEFLECTION_LIMIT);
  const wanted = Math.min(Math.max(steady, stiff), WEIGHTS.widest.value * least);
  if (wanted <= least) return width;
  const step = WEIGHTS.widthStep.value;
  return kerf + Math.ceil(wanted / step - 1e-6) / Math.round(1 / step);
}

/** Of the greatest usual width. */
const STOUT = 1.5;

/**
 * mm as cut: the greatest width of a bridge that an island which lifts too far hangs on.
 * @param length mm
 * @param least mm as cut
 */
export function stoutestWidth(length: number, least: number): number {
  const widest = WEIGHTS.widest.value * least;
  return Math.max(widest, Math.min(WEIGHTS.stoutest.value * length, STOUT * widest));
}
