/** How wide a bridge is: never narrower than asked for, wider where it is long or holds much. */
import { DEFLECTION_LIMIT } from '../../sheet/deflection';
import type { Bending } from '../../sheet/lift/index';
import { WEIGHTS } from './search/weights';

export interface WidthRule {
  /** mm as drawn: the least width. */
  readonly width: number;
  readonly kerf: number;
  readonly bending: Bending;
}

/** Of the limit for lifts: what the bending of its bridges alone may take. */
const SHARE = 0.5;

/**
 * mm as drawn. Against a push in the sheet's plane its length counts (`slenderness`); against the load across it, that its
 * end may lift by half of what a loose tongue may: F L³ / (12 S_b w), both ends clamped (Euler–Bernoulli, any textbook of
 * strength of materials).
 * @param held mm² of material that hang on it
 */
export function bridgeWidth(length: number, held: number, { width, kerf, bending }: WidthRule): number {
  const least = width - kerf;
  const steady = length / WEIGHTS.slenderness.value;
  const stiff = (bending.load * held * length ** 3) / (12 * bending.stiffness * SHARE * DEFLECTION_LIMIT);
  const wanted = Math.min(Math.max(steady, stiff), WEIGHTS.widest.value * least);
  if (wanted <= least) return width;
  const step = WEIGHTS.widthStep.value;
  return kerf + Math.ceil(wanted / step - 1e-6) * step;
}
