/** How numbers are written in cut files: mm to a millionth, so that areas keep their figures. */

export function written(value: number, digits = 6): string {
  const text = value.toFixed(digits);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}
