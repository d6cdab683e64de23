/** How long a scale bar is, and how lengths in mm are written. */

/** Round lengths in mm. */
const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

/** A round length in mm that takes at most `room` pixels. */
export function scaleBarLength(room: number, scale: number): number {
  return STEPS.findLast((candidate) => candidate * scale <= room) ?? 0.01;
}

/** "12.5", without trailing zeros and without the noise of binary fractions. */
export const millimetres = (value: number): string => String(Number(value.toFixed(3)));
