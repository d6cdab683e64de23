/** Pictures of a report, for hosts that have one. */
import type { Report } from '../report';
import type { Sheet } from '../sheet/sheet';
import { COLOURS, type Look, type LookKind, type PictureLayer, type PictureNeck, type PictureStack } from './look';
import { lookSvg } from './look-svg';
import { pathData } from './path-data';
import { printLook } from './print-look';
import { sheetLook } from './sheet-look';
import { sheetsLook } from './sheets-look';

/** The wall, post or board that is painted on. */
export const DEFAULT_GROUND = COLOURS.ground;

export interface StackPictureOptions {
  readonly look?: LookKind;
  /** `#rrggbb`; anything else is taken as the default ground. */
  readonly ground?: string;
  /** Of each coat of paint, 0..1. */
  readonly opacity?: number;
  /** Draw only the layer of this name; of one sheet, which. */
  readonly layer?: string;
}

/** A picture of the stack as SVG text at true size. */
export function stackPicture(report: Report, options: StackPictureOptions = {}): string {
  const { drawing, sheets } = report;
  const stack = pictureStack(sheets, { minX: 0, minY: 0, maxX: drawing.width, maxY: drawing.height });
  const names = stack.layers.map(({ name }) => name);
  return lookSvg(lookOf(stack, sheets, options), { names });
}

/** @param frame of a stack without layers */
export function pictureStack(sheets: readonly Sheet[], frame: PictureStack['sheet']): PictureStack {
  return { sheet: sheets[0]?.frame ?? frame, layers: sheets.map(pictureLayer) };
}

export function pictureLayer({ layer, openings, pieces }: Sheet): PictureLayer {
  return {
    name: layer.name, paint: layer.paint, openings: pathData(openings),
    islands: pieces.filter(({ island }) => island).map(({ polygon, area, label }) => (
      { outline: pathData([polygon]), area, label }
    )),
  };
}

function lookOf(stack: PictureStack, sheets: readonly Sheet[], options: StackPictureOptions): Look {
  const { look = 'print', layer, ground, opacity = 1 } = options;
  const isShown = (index: number) => layer === undefined || stack.layers[index]?.name === layer;
  if (look === 'sheets') return sheetsLook(stack, { isShown });
  if (look === 'print') return printLook(stack, { ground, opacity, isShown });
  const index = Math.max(stack.layers.findIndex((_, each) => isShown(each)), 0);
  return sheetLook(stack, index, { necks: necksOf(sheets[index]) });
}

/** The necks of the material that were found, which are those under the limit. */
export function necksOf(sheet: Sheet | undefined): PictureNeck[] {
  const thin = sheet?.thinMaterial ?? [];
  return thin.filter(({ kind }) => kind === 'neck').map(({ width, from, to }) => ({ width, from, to }));
}
