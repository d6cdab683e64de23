/** A look as the text of an SVG file at true size. */
import type { Matrix, Point } from '../geometry/base/curve-types';
import { translation } from '../geometry/base/matrix';
import { SVG_NAMESPACE } from '../markup/namespaces';
import { escapeText } from '../text/markup-text';
import { lettering, measureLines } from './lettering';
import { decimal } from './path-data';
import { type Annotation, COLOURS, outerRing, type Scene, type SceneLayer, type ScenePart } from './scene';

/** The attribute of the root that tells a picture of a stencil from a stencil. */
export const PICTURE_MARK = 'data-tombolo-picture';

export interface SvgOptions {
  /** The layers' names, in painting order, as titles of their groups. */
  readonly names?: readonly string[];
}

/** A picture as large in mm as what it shows; see-through where nothing lies. */
export function sceneSvg(look: Scene, { names = [] }: SvgOptions = {}): string {
  const { minX, minY, maxX, maxY } = look.box;
  const [width, height] = [decimal(maxX - minX), decimal(maxY - minY)];
  const view = `${decimal(minX)} ${decimal(minY)} ${width} ${height}`;
  const slants = new Set(look.sceneLayers.flatMap(({ parts }) => parts.flatMap(({ hatch }) => hatch ?? [])));
  const size = lettering(look.box);
  return [
    `<svg xmlns="${SVG_NAMESPACE}" ${PICTURE_MARK}="" width="${width}mm" height="${height}mm" viewBox="${view}">`,
    ...(slants.size > 0 ? [`  <defs>${[...slants].map((slant) => pattern(slant, size)).join('')}</defs>`] : []),
    ...look.sceneLayers.map((plate) => layerText(plate, size, names)),
    '</svg>',
    '',
  ].join('\n');
}

function layerText(
  { layer, place, parts, annotations: notes }: SceneLayer,
  size: number,
  names: readonly string[],
): string {
  const name = layer === undefined ? undefined : names[layer];
  const title = name === undefined ? '' : `<title>${escapeText(name)}</title>`;
  const content = [
    ...parts.map((part, order) => partText(part, size, `rim-${layer}-${order}`)),
    ...notes.map((note) => annotationText(note, size)),
  ];
  return `  <g${transformText(place)}>${title}${content.join('')}</g>`;
}

/** @param id that no other part has */
function partText({ role, outline, fill, opacity, hatch, rim, fall }: ScenePart, size: number, id: string): string {
  if (outline === '') return '';
  const thin = size / 12;
  const place = fall ? transformText(translation(fall.x, fall.y)) : '';
  const shape = (attributes: string) => `<path fill-rule="evenodd"${place} d="${outline}" ${attributes}/>`;
  if (role === 'frame') return shape(`fill="none" stroke="${fill}" stroke-width="${decimal(thin)}"`);
  if (role === 'cut-line') return shape(`fill="none" stroke="${COLOURS.note}" stroke-width="${decimal(thin)}"`);
  if (role === 'shadow') {
    const down = transformText(translation(size / 24, size / 16));
    return `<path fill-rule="evenodd"${down} d="${outline}" fill="${fill}" fill-opacity="${decimal(opacity)}"/>`;
  }
  const filled = shape(
    `fill="${fill}"${opacity === 1 ? '' : ` fill-opacity="${decimal(opacity)}"`}${
      role === 'bare' || role === 'gone' ? ` stroke="${fill}" stroke-width="${decimal(thin)}"` : ''
    }`,
  );
  if (hatch === undefined) return filled;
  const lines = `url(#${patternName(hatch)})`;
  const edge = `stroke="${COLOURS.hatch}" stroke-width="${decimal(thin)}"`;
  if (rim === undefined) return filled + shape(`fill="${lines}" ${edge}`);
  // Of a line twice as wide as the rim, the half that lies inside.
  const ring = (attributes: string) => `<path${place} d="${outerRing(outline)}" fill="none" ${attributes}/>`;
  const clip = `<clipPath id="${id}"><path d="${outerRing(outline)}"/></clipPath>`;
  const inside = `stroke="${lines}" stroke-width="${decimal(2 * rim)}" clip-path="url(#${id})"`;
  return clip + filled + ring(inside) + ring(edge);
}

const patternName = (slant: number): string => `hatch-${decimal(slant).replace('.', '_')}`;

function pattern(slant: number, size: number): string {
  const gap = decimal(size * 0.6);
  return (
    `<pattern id="${patternName(slant)}" width="${gap}" height="${gap}" patternUnits="userSpaceOnUse" ` +
    `patternTransform="rotate(${decimal(slant)})"><path d="M0 0V${gap}" stroke="${COLOURS.hatch}" ` +
    `stroke-width="${decimal(size * 0.22)}"/></pattern>`
  );
}

function annotationText(note: Annotation, size: number): string {
  if (note.kind === 'letter') {
    return writing(note.at, note.text, `text-anchor="middle" dominant-baseline="central" font-weight="700"`, size);
  }
  if (note.kind === 'caption') {
    const { x, y } = note.at;
    const chip =
      `<rect x="${decimal(x)}" y="${decimal(y - size * 1.35)}" width="${decimal(size)}" ` +
      `height="${decimal(size)}" fill="${note.paint}" stroke="${COLOURS.frame}" stroke-width="${decimal(size / 12)}"/>`;
    return chip + writing({ x: x + size * 1.5, y: y - size * 0.5 }, note.text, '', size);
  }
  const { lines, label } = measureLines(note.from, note.to, size);
  const attributes = 'text-anchor="start" dominant-baseline="central"';
  return (
    `<path d="${lines}" fill="none" stroke="#ffffff" stroke-width="${decimal(size / 4)}"/>` +
    `<path d="${lines}" fill="none" stroke="${COLOURS.note}" stroke-width="${decimal(size / 12)}"/>` +
    writing(label, note.text, attributes, size * 0.8)
  );
}

/** Common ones by name: not every renderer knows which font is meant by the last. */
const FONTS = 'Helvetica, Arial, DejaVu Sans, Liberation Sans, sans-serif';

/** Dark letters with a light rim, to be read on anything. */
function writing({ x, y }: Point, text: string, attributes: string, size: number): string {
  return (
    `<text x="${decimal(x)}" y="${decimal(y)}" ${attributes} font-family="${FONTS}" font-size="${decimal(size)}" ` +
    `fill="${COLOURS.note}" stroke="#ffffff" stroke-width="${decimal(size / 5)}" paint-order="stroke">` +
    `${escapeText(text)}</text>`
  );
}

function transformText(place: Matrix): string {
  const { a, b, c, d, e, f } = place;
  if (a === 1 && b === 0 && c === 0 && d === 1 && e === 0 && f === 0) return '';
  const exact = (value: number) => Number(value.toFixed(9));
  return ` transform="matrix(${exact(a)} ${exact(b)} ${exact(c)} ${exact(d)} ${decimal(e)} ${decimal(f)})"`;
}
