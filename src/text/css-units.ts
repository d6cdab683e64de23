/** Absolute units of CSS (CSS Values and Units, "Absolute Lengths" and "Angle Units"), by their names in lower case. */

export const MM_PER_PX = 25.4 / 96;

/** Millimetres in one unit of length: 1in = 25.4mm = 96px = 72pt = 6pc. */
export const MM_PER_UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: MM_PER_PX,
};

/** CSS px in one unit of length. */
export const PX_PER_UNIT: Readonly<Record<string, number>> = {
  px: 1,
  mm: 96 / 25.4,
  cm: 96 / 2.54,
  q: 96 / 101.6,
  in: 96,
  pt: 96 / 72,
  pc: 16,
};

/** Degrees in one unit of angle. */
export const DEGREES_PER_UNIT: Readonly<Record<string, number>> = { deg: 1, grad: 0.9, rad: 180 / Math.PI, turn: 360 };
