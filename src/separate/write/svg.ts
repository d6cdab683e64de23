/** Layers as SVG text, in millimetres. */
import type { Cubic, Line, Point } from '../../geometry/base/curve-types';
import type { SeparatedLayer, Separation } from '../separation';

/** mm have so many digits: a micrometre. */
const DIGITS = 3;

/** A text of SVG, and which of the layers it holds. */
export interface LayersText {
  readonly text: string;
  readonly layers: readonly SeparatedLayer[];
}

/** One drawing with a group for each layer, first sprayed first. Each connected opening is a path of its own. */
export function layersAsSvg({ width, height, layers }: Separation): LayersText {
  const size = `width="${number(width)}mm" height="${number(height)}mm" viewBox="0 0 ${number(width)} ${number(height)}"`;
  const groups = layers.map(
    (layer) =>
      `  <g id="${idOf(layer.name)}" fill="${layer.paint}">\n    <title>${layer.name}</title>\n` +
      `${layer.shapes.map((shape) => `    <path d="${shape.map(ringData).join('')}"/>\n`).join('')}  </g>\n`,
  );
  // A colour that reaches round the whole frame is painted there as well: it is not to be taken for the sheet.
  return {
    text: `<svg xmlns="http://www.w3.org/2000/svg" ${size} data-tombolo-reading="openings">\n${groups.join('')}</svg>\n`,
    layers,
  };
}

export function idOf(name: string): string {
  return name.replaceAll(' ', '-');
}

/** The openings of a layer as path data in mm. */
export function outlineOf({ shapes }: SeparatedLayer): string {
  return shapes.map((shape) => shape.map(ringData).join('')).join('');
}

function ringData(curves: readonly (Line | Cubic)[]): string {
  const [first] = curves;
  if (!first) return '';
  const last = curves.length - 1;
  // The line that leads back to the start is drawn by closing.
  const drawn = curves.filter((curve, i) => i < last || curve.kind !== 'line');
  return `M${point(first.start)}${drawn.map(curveData).join('')}Z`;
}

function curveData(curve: Line | Cubic): string {
  return curve.kind === 'line'
    ? `L${point(curve.end)}`
    : `C${point(curve.control1)} ${point(curve.control2)} ${point(curve.end)}`;
}

function point({ x, y }: Point): string {
  return `${number(x)} ${number(y)}`;
}

function number(value: number): string {
  return String(Number(value.toFixed(DIGITS)));
}
