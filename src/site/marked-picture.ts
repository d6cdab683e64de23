/** A sheet, or the print of several, with rings round what one check found. */
import type { Report } from '../engine/index';
import { stackScene } from '../picture/picture';
import { COLOURS } from '../picture/scene';
import { sceneSvg } from '../picture/scene-svg';

/** @returns the text of an SVG file, as large as the artwork's frame */
export function markedPicture(report: Report, id?: string): string {
  const { width, height } = report.drawing;
  const scene = stackScene(report, { look: report.sheets.length > 1 ? 'print' : 'sheet' });
  const line = width / 110;
  const rings = report.findings
    .filter(({ check, at }) => check === id && at !== undefined)
    .map(({ at }) => ring(Math.min(width, Math.max(0, at!.x)), Math.min(height, Math.max(0, at!.y)), width / 16, line));
  return sceneSvg(scene).replace(/<\/svg>\s*$/, `${rings.join('')}</svg>\n`);
}

/** Light round dark, so that it is seen on every paint. */
function ring(x: number, y: number, radius: number, line: number): string {
  const circle = (stroke: string, width: number) =>
    `<circle cx="${x}" cy="${y}" r="${radius}" fill="none" stroke="${stroke}" stroke-width="${width}"/>`;
  return circle(COLOURS.ground, line * 2.4) + circle(COLOURS.bare, line);
}
