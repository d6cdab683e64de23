/**
 * A sheet as SVG for a cutter: one path for each cut, in order, at true size in mm. No styles, groups or transforms, for
 * programs that drive cutters read them each in their own way, or not at all.
 */
import type { Arc, Curve, Point } from '../../geometry/base/curve-types';
import { singularValues } from '../../geometry/base/matrix';
import { cross } from '../../geometry/base/vector';
import { subCurve } from '../../geometry/curve/index';
import { escapeText } from '../../text/markup-text';
import type { Chain } from '../chains';
import type { CutSheet } from '../types';
import { written } from './numbers';
import { titleOf } from './title';

/** The colours by which programs tell what is cut from what is drawn. Common practice, no source. */
const COLOURS = { cut: '#ff0000', pen: '#0000ff' } as const;

/** mm: a hairline, which programs take as a line to be cut. Common practice, no source. */
const HAIRLINE = 0.01;

/**
 * The text of the file.
 * @param mark the attribute that tells it from an artist's drawing
 */
export function cutSvg(sheet: CutSheet, mark: string): string {
  const [width, height] = [written(sheet.width), written(sheet.height)];
  const cuts = sheet.contours.map(({ curves, closed }) => pathElement(chainData(curves, closed), COLOURS.cut));
  const pen = sheet.pen.map((points) => pathElement(lineData(points), COLOURS.pen));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" ${mark}="cut">`,
    `<title>${escapeText(titleOf(sheet))}</title>`,
    ...pen,
    ...cuts,
    '</svg>',
    '',
  ].join('\n');
}

function pathElement(data: string, colour: string): string {
  return `<path fill="none" stroke="${colour}" stroke-width="${HAIRLINE}" d="${data}"/>`;
}

function lineData(points: readonly Point[]): string {
  return `M${points.map(pair).join('L')}`;
}

/** Path data of a chain, each curve as what it is. */
export function chainData(chain: Chain, closed: boolean): string {
  const [first] = chain;
  if (!first) return '';
  // The last line of a closed outline is what closes it.
  const own = closed && chain.length > 1 && chain.at(-1)?.kind === 'line' ? chain.slice(0, -1) : chain;
  return `M${pair(first.start)}${own.map(command).join('')}${closed ? 'Z' : ''}`;
}

function command(curve: Curve): string {
  switch (curve.kind) {
    case 'line':
      return `L${pair(curve.end)}`;
    case 'quadratic':
      return `Q${pair(curve.control)} ${pair(curve.end)}`;
    case 'cubic':
      return `C${pair(curve.control1)} ${pair(curve.control2)} ${pair(curve.end)}`;
    case 'arc':
      return arcCommands(curve);
  }
}

/** Radians: where an arc comes near to a half turn, its written ends no longer tell its centre. */
const LONGEST_ARC = 1.8;

function arcCommands(arc: Arc): string {
  const parts = Math.max(1, Math.ceil(Math.abs(arc.sweep) / LONGEST_ARC));
  const { larger, smaller, angle } = semiAxes(arc);
  const clockwise = arc.sweep > 0 === cross(arc.axisU, arc.axisV) > 0 ? 1 : 0;
  return Array.from({ length: parts }, (_, i) => {
    const { end } = i === parts - 1 ? arc : subCurve(arc, i / parts, (i + 1) / parts);
    return `A${written(larger, 6)} ${written(smaller, 6)} ${written(angle, 6)} 0 ${clockwise} ${pair(end)}`;
  }).join('');
}

/** Of the ellipse that a circle becomes whose axes are given; the angle of the larger one in degrees. */
function semiAxes({ axisU: u, axisV: v }: Arc): { larger: number; smaller: number; angle: number } {
  const { larger, smaller } = singularValues(u, v);
  if (larger - smaller < 1e-9 * larger) return { larger, smaller: larger, angle: 0 };
  const angle = Math.atan2(2 * (u.x * u.y + v.x * v.y), u.x ** 2 + v.x ** 2 - u.y ** 2 - v.y ** 2) / 2;
  return { larger, smaller, angle: (angle * 180) / Math.PI };
}

function pair({ x, y }: Point): string {
  return `${written(x)} ${written(y)}`;
}
