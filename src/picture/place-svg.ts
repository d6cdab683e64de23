/** A little picture of the place that a finding is about: the sheet there, what is cut out, and a ring round it. */
import type { Finding } from '../checks/finding';
import type { Box } from '../geometry/base/polygon-types';
import { boxOfPolygon, clipToBox } from '../geometry/boolean/index';
import { SVG_NAMESPACE } from '../markup/namespaces';
import type { Report } from '../report/report';
import { decimal, pathData } from './path-data';
import { COLOURS } from './scene';

/** CSS pixels. */
const [WIDTH, HEIGHT] = [160, 96];

/** mm: how high the picture is at the least and at the most. */
const [NEAR, FAR] = [8, 60];

/** How many times as high as what was measured the picture is. */
const AROUND = 5;

/** Characters: a longer picture takes longer to show than a hover is looked at. */
const LONGEST = 20_000;

/** Paint that is like the card is told by its edge. */
const EDGE = COLOURS.note;

/** @returns the text of an SVG file; undefined where the finding has no place in a sheet, or there is too much to draw */
export function placeSvg({ sheets }: Report, { at, layerId, measure }: Finding): string | undefined {
  const sheet = sheets.find(({ layer }) => layer.id === layerId);
  if (!sheet || !at) return undefined;
  const height = Math.min(FAR, Math.max(NEAR, AROUND * extentOf(measure)));
  const width = (height * WIDTH) / HEIGHT;
  const [minX, minY] = [at.x - width / 2, at.y - height / 2];
  const box: Box = { minX, minY, maxX: minX + width, maxY: minY + height };
  const near = sheet.openings.filter((opening) => isOverlapping(boxOfPolygon(opening), box));
  const line = height / HEIGHT;
  const view = [minX, minY, width, height].map(decimal).join(' ');
  const svg = [
    `<svg xmlns="${SVG_NAMESPACE}" width="${WIDTH}" height="${HEIGHT}" viewBox="${view}">`,
    rectangle(box, COLOURS.ground),
    rectangle(sheet.frame, COLOURS.card),
    `<path fill-rule="evenodd" d="${pathData(clipToBox(near, box))}" fill="${sheet.layer.paint}" stroke="${EDGE}" stroke-width="${decimal(line)}"/>`,
    ring(at, height / 12, COLOURS.ground, line * 5),
    ring(at, height / 12, COLOURS.bare, line * 2.5),
    '</svg>',
  ].join('');
  return svg.length <= LONGEST ? svg : undefined;
}

/** mm */
function extentOf(measure: Finding['measure']): number {
  if (!measure) return 0;
  return measure.unit === 'mm²' ? Math.sqrt(measure.value) / 2 : measure.value;
}

function isOverlapping(a: Box, b: Box): boolean {
  return a.minX < b.maxX && a.maxX > b.minX && a.minY < b.maxY && a.maxY > b.minY;
}

function rectangle({ minX, minY, maxX, maxY }: Box, fill: string): string {
  const [x, y, width, height] = [minX, minY, maxX - minX, maxY - minY].map(decimal);
  return `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>`;
}

function ring(
  { x, y }: { readonly x: number; readonly y: number },
  radius: number,
  stroke: string,
  width: number,
): string {
  const [cx, cy, r] = [x, y, radius].map(decimal);
  return `<circle cx="${cx}" cy="${cy}" r="${r}" fill="none" stroke="${stroke}" stroke-width="${decimal(width)}"/>`;
}
