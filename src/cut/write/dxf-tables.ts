/** What a DXF file wants round its entities: header, tables, blocks and objects. */
import type { CutSheet } from '../types';
import type { DxfFile } from './dxf-file';

/** Names of layers, which R12 wants without blanks; and their colours by number: red and blue. */
const LAYERS = [
  { name: 'CUT', colour: 1 },
  { name: 'PEN_OR_ENGRAVE', colour: 5 },
] as const;
export type LayerName = (typeof LAYERS)[number]['name'];

/** Handles, in hexadecimal, of what others refer to. */
export const HANDLES = { blockRecords: '1', model: '10', paper: '11', dictionary: 'C', groups: 'D' } as const;

export function writeHeader(file: DxfFile, { width, height }: CutSheet): void {
  file.section('HEADER', () => {
    file.put(9, '$ACADVER');
    file.put(1, file.version);
    if (file.isNew) {
      file.put(9, '$HANDSEED');
      file.put(5, 'FFFFF');
      // 4: millimetres; $MEASUREMENT 1: metric.
      file.put(9, '$INSUNITS');
      file.put(70, 4);
      file.put(9, '$MEASUREMENT');
      file.put(70, 1);
    }
    extent(file, '$EXTMIN', 0, 0);
    extent(file, '$EXTMAX', width, height);
  });
}

export function writeTables(file: DxfFile): void {
  file.section('TABLES', () => {
    if (file.isNew) table(file, 'VPORT', [], 'AcDbViewportTableRecord');
    table(file, 'LTYPE', lineTypes(file), 'AcDbLinetypeTableRecord');
    table(file, 'LAYER', layers(file), 'AcDbLayerTableRecord');
    table(file, 'STYLE', [() => textStyle(file)], 'AcDbTextStyleTableRecord');
    if (!file.isNew) return;
    table(file, 'VIEW', [], 'AcDbViewTableRecord');
    table(file, 'UCS', [], 'AcDbUCSTableRecord');
    table(file, 'APPID', [() => named(file, 'ACAD', [[70, 0]])], 'AcDbRegAppTableRecord');
    table(file, 'DIMSTYLE', [], 'AcDbDimStyleTableRecord');
    blockRecords(file);
  });
}

export function writeBlocks(file: DxfFile): void {
  file.section('BLOCKS', () => {
    block(file, '*Model_Space', HANDLES.model);
    block(file, '*Paper_Space', HANDLES.paper);
  });
}

export function writeObjects(file: DxfFile): void {
  file.section('OBJECTS', () => {
    dictionary(file, HANDLES.dictionary, '0');
    file.put(3, 'ACAD_GROUP');
    file.put(350, HANDLES.groups);
    dictionary(file, HANDLES.groups, HANDLES.dictionary);
  });
}

function table(file: DxfFile, name: string, records: readonly (() => void)[], subclass: string): void {
  file.put(0, 'TABLE');
  file.put(2, name);
  if (file.isNew) {
    file.put(5, file.nextHandle());
    file.put(330, 0);
    file.put(100, 'AcDbSymbolTable');
  }
  file.put(70, records.length);
  if (file.isNew && name === 'DIMSTYLE') file.put(100, 'AcDbDimStyleTable');
  for (const record of records) {
    file.put(0, name);
    if (file.isNew) {
      file.put(5, file.nextHandle());
      file.put(100, 'AcDbSymbolTableRecord');
      file.put(100, subclass);
    }
    record();
  }
  file.put(0, 'ENDTAB');
}

function named(file: DxfFile, name: string, groups: readonly (readonly [number, string | number])[]): void {
  file.put(2, name);
  for (const [code, value] of groups) file.put(code, value);
}

function lineTypes(file: DxfFile): (() => void)[] {
  const names = file.isNew ? ['ByBlock', 'ByLayer', 'CONTINUOUS'] : ['CONTINUOUS'];
  return names.map(
    (name) => () =>
      named(file, name, [
        [70, 0],
        [3, name === 'CONTINUOUS' ? 'Solid line' : ''],
        [72, 65],
        [73, 0],
        [40, '0.0'],
      ]),
  );
}

function layers(file: DxfFile): (() => void)[] {
  return [{ name: '0', colour: 7 }, ...LAYERS].map(
    ({ name, colour }) =>
      () =>
        named(file, name, [
          [70, 0],
          [62, colour],
          [6, 'CONTINUOUS'],
        ]),
  );
}

function textStyle(file: DxfFile): void {
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
  named(file, 'STANDARD', groups);
}

function blockRecords(file: DxfFile): void {
  file.put(0, 'TABLE');
  file.put(2, 'BLOCK_RECORD');
  file.put(5, HANDLES.blockRecords);
  file.put(330, 0);
  file.put(100, 'AcDbSymbolTable');
  file.put(70, 2);
  for (const [name, handle] of [
    ['*Model_Space', HANDLES.model],
    ['*Paper_Space', HANDLES.paper],
  ] as const) {
    file.put(0, 'BLOCK_RECORD');
    file.put(5, handle);
    file.put(330, HANDLES.blockRecords);
    file.put(100, 'AcDbSymbolTableRecord');
    file.put(100, 'AcDbBlockTableRecord');
    file.put(2, name);
  }
  file.put(0, 'ENDTAB');
}

function block(file: DxfFile, name: string, owner: string): void {
  for (const type of ['BLOCK', 'ENDBLK']) {
    file.put(0, type);
    file.put(5, file.nextHandle());
    file.put(330, owner);
    file.put(100, 'AcDbEntity');
    file.put(8, '0');
    file.put(100, type === 'BLOCK' ? 'AcDbBlockBegin' : 'AcDbBlockEnd');
    if (type === 'ENDBLK') continue;
    file.put(2, name);
    file.put(70, 0);
    file.point(0, 0);
    file.put(30, '0.0');
    file.put(3, name);
    file.put(1, '');
  }
}

function dictionary(file: DxfFile, handle: string, owner: string): void {
  file.put(0, 'DICTIONARY');
  file.put(5, handle);
  file.put(330, owner);
  file.put(100, 'AcDbDictionary');
  file.put(281, 1);
}

function extent(file: DxfFile, name: string, x: number, y: number): void {
  file.put(9, name);
  file.point(x, y);
  file.put(30, '0.0');
}
