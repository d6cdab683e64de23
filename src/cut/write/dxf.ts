/**
 * Sheets as DXF, by the published format reference of its maker: AC1015 (2000), which states the millimetre, or AC1009
 * (R12), which states no unit. Lines and circular arcs alone; y up, as the format has it.
 */
import type { Point } from '../../geometry/base/curve-types';
import type { CutSheet } from '../types';
import { type Bow, bowsOf } from './arcs';
import { titleOf } from './title';

export type DxfVersion = 'AC1015' | 'AC1009';

/** mm: how far arcs may lie from the curves that they stand for. */
export const ARC_TOLERANCE = 0.01;

/** Names of layers, which R12 wants without blanks; and their colours by number: red and blue. */
const LAYERS = [
  { name: 'CUT', colour: 1 },
  { name: 'PEN_OR_ENGRAVE', colour: 5 },
] as const;
type LayerName = (typeof LAYERS)[number]['name'];

/** A polyline: its bows end to end; one that is open ends with its last bow's end. */
interface Polyline {
  readonly layer: LayerName;
  readonly bows: readonly Bow[];
  readonly closed: boolean;
}

/** @param mark a comment that tells it from an artist's file */
export function cutDxf(sheet: CutSheet, mark: string, version: DxfVersion = 'AC1015'): string {
  const lines = polylinesOf(sheet);
  const file = new DxfFile(version, sheet.height);
  const comments = [mark, ascii(titleOf(sheet)), `Millimetres. Curves are arcs within ${ARC_TOLERANCE} mm.`];
  for (const comment of comments) file.put(999, comment);
  file.header(sheet);
  file.tables();
  if (version === 'AC1015') file.blocks();
  file.section('ENTITIES', () => {
    for (const each of lines) file.polyline(each);
  });
  if (version === 'AC1015') file.objects();
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

/** Handles, in hexadecimal, of what others refer to. */
const HANDLES = { blockRecords: '1', model: '10', paper: '11', dictionary: 'C', groups: 'D' } as const;

class DxfFile {
  text = '';
  private handle = 0x20;
  private readonly version: DxfVersion;
  private readonly height: number;

  constructor(version: DxfVersion, height: number) {
    this.version = version;
    this.height = height;
  }

  put(code: number, value: string | number): void {
    this.text += `${String(code).padStart(3)}\n${value}\n`;
  }

  section(name: string, fill: () => void): void {
    this.put(0, 'SECTION');
    this.put(2, name);
    fill();
    this.put(0, 'ENDSEC');
  }

  header({ width, height }: CutSheet): void {
    this.section('HEADER', () => {
      this.put(9, '$ACADVER');
      this.put(1, this.version);
      if (this.isNew) {
        this.put(9, '$HANDSEED');
        this.put(5, 'FFFFF');
        // 4: millimetres; $MEASUREMENT 1: metric.
        this.put(9, '$INSUNITS');
        this.put(70, 4);
        this.put(9, '$MEASUREMENT');
        this.put(70, 1);
      }
      this.extent('$EXTMIN', 0, 0);
      this.extent('$EXTMAX', width, height);
    });
  }

  tables(): void {
    this.section('TABLES', () => {
      if (this.isNew) this.table('VPORT', [], 'AcDbViewportTableRecord');
      this.table('LTYPE', this.lineTypes(), 'AcDbLinetypeTableRecord');
      this.table('LAYER', this.layers(), 'AcDbLayerTableRecord');
      this.table('STYLE', [() => this.textStyle()], 'AcDbTextStyleTableRecord');
      if (!this.isNew) return;
      this.table('VIEW', [], 'AcDbViewTableRecord');
      this.table('UCS', [], 'AcDbUCSTableRecord');
      this.table('APPID', [() => this.named('ACAD', [[70, 0]])], 'AcDbRegAppTableRecord');
      this.table('DIMSTYLE', [], 'AcDbDimStyleTableRecord');
      this.blockRecords();
    });
  }

  blocks(): void {
    this.section('BLOCKS', () => {
      this.block('*Model_Space', HANDLES.model);
      this.block('*Paper_Space', HANDLES.paper);
    });
  }

  objects(): void {
    this.section('OBJECTS', () => {
      this.dictionary(HANDLES.dictionary, '0');
      this.put(3, 'ACAD_GROUP');
      this.put(350, HANDLES.groups);
      this.dictionary(HANDLES.groups, HANDLES.dictionary);
    });
  }

  polyline({ layer, bows, closed }: Polyline): void {
    const last = bows.at(-1);
    if (!last) return;
    const ends: readonly Bow[] = closed ? bows : [...bows, { start: last.end, end: last.end, bulge: 0 }];
    if (this.isNew) this.lightPolyline(layer, ends, closed);
    else this.oldPolyline(layer, ends, closed);
  }

  private get isNew(): boolean {
    return this.version === 'AC1015';
  }

  private lightPolyline(layer: LayerName, bows: readonly Bow[], closed: boolean): void {
    this.entity('LWPOLYLINE', layer);
    this.put(100, 'AcDbPolyline');
    this.put(90, bows.length);
    this.put(70, closed ? 1 : 0);
    for (const bow of bows) this.vertex(bow);
  }

  private oldPolyline(layer: LayerName, bows: readonly Bow[], closed: boolean): void {
    this.entity('POLYLINE', layer);
    this.put(66, 1);
    this.point(0, 0);
    this.put(30, '0.0');
    this.put(70, closed ? 1 : 0);
    for (const bow of bows) {
      this.entity('VERTEX', layer);
      this.vertex(bow, true);
    }
    this.entity('SEQEND', layer);
  }

  /** The bulge tells of the arc from this vertex to the next; y up turns its sign. */
  private vertex({ start, bulge }: Bow, elevated = false): void {
    this.point(start.x, this.height - start.y);
    if (elevated) this.put(30, '0.0');
    if (bulge !== 0) this.put(42, decimal(-bulge, 9));
  }

  private entity(type: string, layer: LayerName): void {
    this.put(0, type);
    if (this.isNew) {
      this.put(5, this.nextHandle());
      this.put(330, HANDLES.model);
      this.put(100, 'AcDbEntity');
    }
    this.put(8, layer);
  }

  private table(name: string, records: readonly (() => void)[], subclass: string): void {
    this.put(0, 'TABLE');
    this.put(2, name);
    if (this.isNew) {
      this.put(5, this.nextHandle());
      this.put(330, 0);
      this.put(100, 'AcDbSymbolTable');
    }
    this.put(70, records.length);
    if (this.isNew && name === 'DIMSTYLE') this.put(100, 'AcDbDimStyleTable');
    for (const record of records) {
      this.put(0, name);
      if (this.isNew) {
        this.put(5, this.nextHandle());
        this.put(100, 'AcDbSymbolTableRecord');
        this.put(100, subclass);
      }
      record();
    }
    this.put(0, 'ENDTAB');
  }

  private named(name: string, groups: readonly (readonly [number, string | number])[]): void {
    this.put(2, name);
    for (const [code, value] of groups) this.put(code, value);
  }

  private lineTypes(): (() => void)[] {
    const names = this.isNew ? ['ByBlock', 'ByLayer', 'CONTINUOUS'] : ['CONTINUOUS'];
    return names.map(
      (name) => () =>
        this.named(name, [
          [70, 0],
          [3, name === 'CONTINUOUS' ? 'Solid line' : ''],
          [72, 65],
          [73, 0],
          [40, '0.0'],
        ]),
    );
  }

  private layers(): (() => void)[] {
    return [{ name: '0', colour: 7 }, ...LAYERS].map(
      ({ name, colour }) =>
        () =>
          this.named(name, [
            [70, 0],
            [62, colour],
            [6, 'CONTINUOUS'],
          ]),
    );
  }

  private textStyle(): void {
    const groups: [number, string | number][] = [
      [70, 0],
      [40, '0.0'],
      [41, '1.0'],
      [50, '0.0'],
      [71, 0],
      [42, '2.5'],
      [3, 'txt'],
      [4, ''],
    ];
    this.named('STANDARD', groups);
  }

  private blockRecords(): void {
    this.put(0, 'TABLE');
    this.put(2, 'BLOCK_RECORD');
    this.put(5, HANDLES.blockRecords);
    this.put(330, 0);
    this.put(100, 'AcDbSymbolTable');
    this.put(70, 2);
    for (const [name, handle] of [
      ['*Model_Space', HANDLES.model],
      ['*Paper_Space', HANDLES.paper],
    ] as const) {
      this.put(0, 'BLOCK_RECORD');
      this.put(5, handle);
      this.put(330, HANDLES.blockRecords);
      this.put(100, 'AcDbSymbolTableRecord');
      this.put(100, 'AcDbBlockTableRecord');
      this.put(2, name);
    }
    this.put(0, 'ENDTAB');
  }

  private block(name: string, owner: string): void {
    for (const type of ['BLOCK', 'ENDBLK']) {
      this.put(0, type);
      this.put(5, this.nextHandle());
      this.put(330, owner);
      this.put(100, 'AcDbEntity');
      this.put(8, '0');
      this.put(100, type === 'BLOCK' ? 'AcDbBlockBegin' : 'AcDbBlockEnd');
      if (type === 'ENDBLK') continue;
      this.put(2, name);
      this.put(70, 0);
      this.point(0, 0);
      this.put(30, '0.0');
      this.put(3, name);
      this.put(1, '');
    }
  }

  private dictionary(handle: string, owner: string): void {
    this.put(0, 'DICTIONARY');
    this.put(5, handle);
    this.put(330, owner);
    this.put(100, 'AcDbDictionary');
    this.put(281, 1);
  }

  private extent(name: string, x: number, y: number): void {
    this.put(9, name);
    this.point(x, y);
    this.put(30, '0.0');
  }

  private point(x: number, y: number): void {
    this.put(10, decimal(x));
    this.put(20, decimal(y));
  }

  private nextHandle(): string {
    this.handle += 1;
    return this.handle.toString(16).toUpperCase();
  }
}

/** Readers want a decimal point in real numbers. */
function decimal(value: number, digits = 6): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? '0.0' : text;
}
