/** Pictures of the stack, drawn from measured geometry alone: nothing of the artist's markup goes into them. */
import type { Region, Ring } from '../geometry/region';
import type { Report } from '../report';
import type { Sheet } from '../sheet/sheet';

/** The wall, post or board that is painted on. */
export const DEFAULT_GROUND = '#d8d0c0';

export interface StackPictureOptions {
  /** `#rrggbb`; anything else is taken as the default ground. */
  readonly ground?: string;
  /** Draw only the layer of this name. */
  readonly layer?: string;
}

/**
 * The painted stack as SVG text at true size: the artwork's frame in mm, the ground, and each layer's openings in its
 * paint, first painted first.
 */
export function stackPicture(report: Report, options: StackPictureOptions = {}): string {
  const width = decimal(report.drawing.width);
  const height = decimal(report.drawing.height);
  const sheets = report.sheets.filter((sheet) => options.layer === undefined || sheet.layer.name === options.layer);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `  <rect width="${width}" height="${height}" fill="${colourOr(options.ground, DEFAULT_GROUND)}"/>`,
    ...sheets.map(paintedLayer),
    '</svg>',
    '',
  ].join('\n');
}

function paintedLayer(sheet: Sheet): string {
  const paint = colourOr(sheet.layer.paint, '#000000');
  const title = escapeText(sheet.layer.name);
  return `  <g fill="${paint}"><title>${title}</title><path fill-rule="evenodd" d="${pathData(sheet.openings)}"/></g>`;
}

/** SVG path data of a region, in its own units (mm), to the micrometre. */
export function pathData(region: Region): string {
  return region.flatMap(({ outer, holes }) => [outer, ...holes].map(ringData)).join('');
}

function ringData(ring: Ring): string {
  const points: string[] = [];
  for (let index = 0; index + 1 < ring.length; index += 2) {
    points.push(`${decimal(ring[index]!)} ${decimal(ring[index + 1]!)}`);
  }
  return points.length < 3 ? '' : `M${points.join('L')}Z`;
}

/** To three decimals; 0 for what is not finite, so that no word such as `NaN` gets into the picture. */
function decimal(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return Number.isFinite(rounded) ? String(rounded === 0 ? 0 : rounded) : '0';
}

function colourOr(colour: string | undefined, fallback: string): string {
  return colour !== undefined && /^#[0-9a-f]{6}$/i.test(colour) ? colour : fallback;
}

/** Text for element content. Characters that XML 1.0 section 2.2 does not allow become U+FFFD. */
function escapeText(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');
}
