/** Colours in plain words, for the names of layers. */
import { defined } from '../../base/defined';
import { oklabOf } from '../colour/oklab';
import type { Rgb } from '../raster';

/** Hues of OKLab in degrees, from each on to the next. Common practice, no source. */
const HUES = [
  [0, 'pink'],
  [12, 'red'],
  [45, 'orange'],
  [85, 'yellow'],
  [118, 'green'],
  [178, 'teal'],
  [220, 'blue'],
  [285, 'purple'],
  [335, 'pink'],
] as const;

/** Chroma below which a colour is grey, below which its hue is only hinted at, and lightness of dark and light ones. */
const GREY = 0.02;
const GREYISH = 0.05;
const DARK = 0.45;
const LIGHT = 0.8;

/** One name each, with a number where several colours have the same name. */
export function colourNames(colours: readonly Rgb[]): string[] {
  const plain = colours.map(plainName);
  return plain.map((name, i) => {
    const alike = plain.slice(0, i).filter((other) => other === name).length;
    return alike === 0 ? name : `${name} ${alike + 1}`;
  });
}

function plainName(colour: Rgb): string {
  const [lightness, a, b] = oklabOf(colour);
  const chroma = Math.hypot(a, b);
  if (chroma < GREY && lightness < 0.25) return 'black';
  if (chroma < GREY && lightness > 0.96) return 'white';
  const shade = lightness < DARK ? 'dark ' : lightness > LIGHT ? 'light ' : '';
  if (chroma < GREY) return `${shade}grey`;
  const hue = hueName(((Math.atan2(b, a) * 180) / Math.PI + 360) % 360);
  if (hue === 'orange' && lightness < 0.6) return lightness < DARK ? 'dark brown' : 'brown';
  if ((hue === 'yellow' || hue === 'orange') && lightness > LIGHT && chroma < 0.1) return 'cream';
  if (hue === 'yellow' && chroma < 0.1 && lightness <= LIGHT) return lightness < DARK ? 'dark olive' : 'olive';
  return chroma < GREYISH ? `${shade}${hue} grey` : `${shade}${hue}`;
}

function hueName(hue: number): string {
  const [, name] = HUES.reduce<(typeof HUES)[number]>(
    (found, each) => (hue >= each[0] ? each : found),
    defined(HUES[0]),
  );
  return name;
}
