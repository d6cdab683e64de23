/** Sheets as PDF at true size, written by hand: ISO 32000-1, of which paths and pages are all that is needed (from memory). */
import type { Arc, Curve, Point } from '../../geometry/base/curve-types';
import { derivativeAt } from '../../geometry/curve/evaluate';
import { subCurve } from '../../geometry/curve/index';
import type { CutSheet } from '../types';
import { written } from './numbers';
import { titleOf } from './title';

/** Points to the mm: PDF's unit is 1/72 inch. */
const POINTS = 72 / 25.4;

/** One page, in mm with the origin at its upper left corner. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  /** Operators of the content stream, in mm, y down. */
  readonly content: string;
}

/** mm: thin, and still seen where the sheet is printed to be cut by hand. */
const LINE_WIDTH = 0.1;

const [CUT_COLOUR, PEN_COLOUR] = ['0 0 0 RG', '0 0 1 RG'];

/** @param mark a comment that tells it from an artist's file */
export function cutPdf(sheet: CutSheet, mark: string): string {
  const { width, height } = sheet;
  return pdfFile([{ width, height, content: cutContent(sheet) }], titleOf(sheet), mark);
}

/** The operators that draw a sheet's lines. */
function cutContent({ contours, pen }: Pick<CutSheet, 'contours' | 'pen'>): string {
  const lines = pen.map((points) => `${lineOperators(points)} S`);
  const cuts = contours.map(({ curves, closed }) => `${chainOperators(curves)} ${closed ? 'h ' : ''}S`);
  return [`${LINE_WIDTH} w`, PEN_COLOUR, ...lines, CUT_COLOUR, ...cuts].join('\n');
}

function lineOperators(points: readonly Point[]): string {
  return points.map((point, i) => `${pair(point)} ${i === 0 ? 'm' : 'l'}`).join(' ');
}

function chainOperators(chain: readonly Curve[]): string {
  const [first] = chain;
  return first ? [`${pair(first.start)} m`, ...chain.map(operators)].join(' ') : '';
}

function operators(curve: Curve): string {
  switch (curve.kind) {
    case 'line':
      return `${pair(curve.end)} l`;
    case 'quadratic': {
      const { start, control, end } = curve;
      const toward = (point: Point): Point => ({
        x: point.x + (2 / 3) * (control.x - point.x),
        y: point.y + (2 / 3) * (control.y - point.y),
      });
      return `${pair(toward(start))} ${pair(toward(end))} ${pair(end)} c`;
    }
    case 'cubic':
      return `${pair(curve.control1)} ${pair(curve.control2)} ${pair(curve.end)} c`;
    case 'arc':
      return arcOperators(curve);
  }
}

/** Radians: an eighth of a turn as one cubic errs by 4.2e-6 of its radius. */
const LONGEST_ARC = Math.PI / 4;

/** An arc of angle θ as a cubic has its controls (4/3)·tan(θ/4) radii along the tangents (from memory). */
function arcOperators(arc: Arc): string {
  const parts = Math.max(1, Math.ceil(Math.abs(arc.sweep) / LONGEST_ARC - 1e-9));
  return Array.from({ length: parts }, (_, i) => {
    const part = subCurve(arc, i / parts, (i + 1) / parts) as Arc;
    const reach = ((4 / 3) * Math.tan(part.sweep / 4)) / part.sweep;
    const [out, into] = [derivativeAt(part, 0), derivativeAt(part, 1)];
    const { start } = part;
    const end = i === parts - 1 ? arc.end : part.end;
    const first = { x: start.x + reach * out.x, y: start.y + reach * out.y };
    const second = { x: end.x - reach * into.x, y: end.y - reach * into.y };
    return `${pair(first)} ${pair(second)} ${pair(end)} c`;
  }).join(' ');
}

function pair({ x, y }: Point): string {
  return `${written(x)} ${written(y)}`;
}

/**
 * A whole file. All of it is ASCII, so that its length in characters is that in bytes.
 * @param resources what the pages' content names, such as fonts
 */
export function pdfFile(pages: readonly PdfPage[], title: string, mark: string, resources = ''): string {
  const numberOf = (page: number) => 4 + 2 * page;
  const kids = pages.map((_, i) => `${numberOf(i)} 0 R`).join(' ');
  const objects = [
    '<</Type/Catalog/Pages 2 0 R/ViewerPreferences<</PrintScaling/None/DisplayDocTitle true>>>>',
    `<</Type/Pages/Kids[${kids}]/Count ${pages.length}>>`,
    `<</Title ${textString(title)}>>`,
    ...pages.flatMap((page, i) => pageObjects(page, numberOf(i) + 1, resources)),
  ];
  let text = `%PDF-1.4\n%${mark}\n`;
  const places = objects.map((object, i) => {
    const place = text.length;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return place;
  });
  const table = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
  const trailer = `trailer\n<</Size ${objects.length + 1}/Root 1 0 R/Info 3 0 R>>\nstartxref\n${text.length}\n%%EOF\n`;
  return `${text}xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}${trailer}`;
}

function pageObjects({ width, height, content }: PdfPage, contents: number, resources: string): string[] {
  const box = `[0 0 ${written(width * POINTS, 5)} ${written(height * POINTS, 5)}]`;
  const scale = POINTS.toFixed(8);
  const stream = `q ${scale} 0 0 -${scale} 0 ${(height * POINTS).toFixed(6)} cm\n${content}\nQ\n`;
  return [
    `<</Type/Page/Parent 2 0 R/MediaBox${box}/Contents ${contents} 0 R/Resources<<${resources}>>>>`,
    `<</Length ${stream.length}>>\nstream\n${stream}endstream`,
  ];
}

/** UTF-16 with its mark, in hexadecimal: any title in ASCII. */
function textString(text: string): string {
  const units = Array.from({ length: text.length }, (_, i) => text.charCodeAt(i).toString(16).padStart(4, '0'));
  return `<feff${units.join('')}>`;
}
