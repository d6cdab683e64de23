/**
 * Sheets as DXF, by the published format reference of its maker: AC1015 (2000), which states the millimetre, or AC1009
 * (R12), which states no unit. Lines and circular arcs alone; y up, as the format has it.
 */
import type { Point } from '../../geometry/base/curve-types';
import type { CutSheet } from '../types';
import { type Bow, bowsOf } from './arcs';
import { DxfFile, type DxfVersion } from './dxf-file';
import { type Polyline, writePolyline } from './dxf-polyline';
import { writeBlocks, writeHeader, writeObjects, writeTables } from './dxf-tables';
import { titleOf } from './title';

/** mm: how far arcs may lie from the curves that they stand for. */
export const ARC_TOLERANCE = 0.01;

/** @param mark a comment that tells it from an artist's file */
export function cutDxf(sheet: CutSheet, mark: string, version: DxfVersion = 'AC1015'): string {
  const lines = polylinesOf(sheet);
  const file = new DxfFile(version, sheet.height);
  const comments = [mark, ascii(titleOf(sheet)), `Millimetres. Curves are arcs within ${ARC_TOLERANCE} mm.`];
  for (const comment of comments) file.put(999, comment);
  writeHeader(file, sheet);
  writeTables(file);
  if (version === 'AC1015') writeBlocks(file);
  file.section('ENTITIES', () => {
    for (const each of lines) writePolyline(file, each);
  });
  if (version === 'AC1015') writeObjects(file);
  file.put(0, 'EOF');
  return file.text;
}

function polylinesOf({ contours, pen }: CutSheet): Polyline[] {
  const drawn = pen.map((points): Polyline => ({ layer: 'PEN_OR_ENGRAVE', closed: false, bows: straight(points) }));
  const cut = contours.map(({ curves, closed }): Polyline => {
    return { layer: 'CUT', closed, bows: curves.flatMap((curve) => bowsOf(curve, ARC_TOLERANCE)) };
  });
  return [...drawn, ...cut];
}

function straight(points: readonly Point[]): Bow[] {
  return points.slice(1).map((end, i) => ({ start: points[i] as Point, end, bulge: 0 }));
}

/** What is not ASCII has no certain meaning in these versions. */
function ascii(text: string): string {
  return text.replace(/[^\x20-\x7e]/gu, '?');
}
