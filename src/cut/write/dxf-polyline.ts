/** Polylines in DXF, of either version. */
import type { Bow } from './arcs';
import { type DxfFile, decimal } from './dxf-file';
import { HANDLES, type LayerName } from './dxf-tables';

/** A polyline: its bows end to end; one that is open ends with its last bow's end. */
export interface Polyline {
  readonly layer: LayerName;
  readonly bows: readonly Bow[];
  readonly closed: boolean;
}

export function writePolyline(file: DxfFile, { layer, bows, closed }: Polyline): void {
  const last = bows.at(-1);
  if (!last) return;
  const ends: readonly Bow[] = closed ? bows : [...bows, { start: last.end, end: last.end, bulge: 0 }];
  if (file.isNew) lightPolyline(file, layer, ends, closed);
  else oldPolyline(file, layer, ends, closed);
}

function lightPolyline(file: DxfFile, layer: LayerName, bows: readonly Bow[], closed: boolean): void {
  entity(file, 'LWPOLYLINE', layer);
  file.put(100, 'AcDbPolyline');
  file.put(90, bows.length);
  file.put(70, closed ? 1 : 0);
  for (const bow of bows) vertex(file, bow);
}

function oldPolyline(file: DxfFile, layer: LayerName, bows: readonly Bow[], closed: boolean): void {
  entity(file, 'POLYLINE', layer);
  file.put(66, 1);
  file.point(0, 0);
  file.put(30, '0.0');
  file.put(70, closed ? 1 : 0);
  for (const bow of bows) {
    entity(file, 'VERTEX', layer);
    vertex(file, bow, true);
  }
  entity(file, 'SEQEND', layer);
}

/** The bulge tells of the arc from this vertex to the next; y up turns its sign. */
function vertex(file: DxfFile, { start, bulge }: Bow, elevated = false): void {
  file.point(start.x, file.height - start.y);
  if (elevated) file.put(30, '0.0');
  if (bulge !== 0) file.put(42, decimal(-bulge, 9));
}

function entity(file: DxfFile, type: string, layer: LayerName): void {
  file.put(0, type);
  if (file.isNew) {
    file.put(5, file.nextHandle());
    file.put(330, HANDLES.model);
    file.put(100, 'AcDbEntity');
  }
  file.put(8, layer);
}
