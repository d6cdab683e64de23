/** Pictures of a report, for hosts that have one. */

import type { Config } from '../config/types';
import { joinBoxes } from '../geometry/base/ring';
import type { Report } from '../report/report';
import { cutLinesOf } from '../sheet/cut-lines/index';
import type { Sheet } from '../sheet/types';
import { sprayedThrough } from '../stack/painted-once';
import { oneLine } from '../text/plain-text';
import { necksOf } from './necks';
import { linePath, pathData } from './path-data';
import { printScene } from './print-scene';
import { COLOURS, type PictureLayer, type PictureStack, type Scene, type ViewMode } from './scene';
import { sheetScene } from './sheet-scene';
import { allSheetsScene } from './sheets-scene';

/** The wall, post or board that is painted on. */
export const DEFAULT_GROUND = COLOURS.ground;

export interface StackPictureOptions {
  readonly look?: ViewMode;
  /** `#rrggbb`; by default what the project says, else `DEFAULT_GROUND`, which also stands in for anything else. */
  readonly ground?: string;
  /** Of each coat of paint, 0..1. */
  readonly opacity?: number;
  /** Draw only the layer of this name; of one sheet, which. */
  readonly layer?: string;
}

/** The stack, of the whole project where the report is of one of its files, in one of the ways of looking. */
export function stackScene(report: Report, options: StackPictureOptions = {}): Scene {
  const sheets = report.stack.layers.map(({ sheet }) => sheet);
  const { config } = report.settings;
  const ground = options.ground ?? config?.ground;
  return sceneOf(pictureStack(report), sheets, { ...options, config, ...(ground !== undefined && { ground }) });
}

/** The layers' names, as pictures of the stack count them. */
export function layerNames({ stack }: Report): string[] {
  return stack.layers.map(({ sheet }) => sheet.layer.name);
}

function pictureStack({ drawing, stack }: Report): PictureStack {
  const sheets = stack.layers.map(({ sheet }) => sheet);
  const frame = { minX: 0, minY: 0, maxX: drawing.width, maxY: drawing.height };
  return {
    sheet: sheets.length > 0 ? joinBoxes(sheets.map((sheet) => sheet.frame)) : frame,
    layers: pictureLayers(sheets),
  };
}

/** The sheets of a stack as pictures need them, in painting order. */
export function pictureLayers(sheets: readonly Sheet[]): PictureLayer[] {
  const sprayed = sprayedThrough(sheets);
  return sheets.map((sheet, i) => {
    const through = sprayed[i];
    const isAll = through === undefined || through === sheet.openings;
    return isAll ? pictureLayer(sheet) : { ...pictureLayer(sheet), sprayed: pathData(through) };
  });
}

function pictureLayer({ layer, openings, pieces }: Sheet): PictureLayer {
  return {
    name: oneLine(layer.name),
    paint: layer.paint,
    openings: pathData(openings),
    label: pieces.find(({ island }) => !island)?.label,
    ...(layer.reading === 'outlines' && {
      cutLines: cutLinesOf(layer)
        .map(({ curves }) => linePath(curves))
        .join(''),
    }),
    islands: pieces
      .filter(({ island }) => island)
      .map(({ polygon, area, label }) => ({ outline: pathData([polygon]), area, label })),
  };
}

function sceneOf(
  stack: PictureStack,
  sheets: readonly Sheet[],
  options: StackPictureOptions & { readonly config: Config | undefined },
): Scene {
  const { look = 'print', layer, ground, opacity = 1, config } = options;
  const isShown = (index: number) => layer === undefined || stack.layers[index]?.name === layer;
  if (look === 'sheets') return allSheetsScene(stack, { isShown });
  if (look === 'print') return printScene(stack, { ground, opacity, isShown });
  const index = Math.max(
    stack.layers.findIndex((_, each) => isShown(each)),
    0,
  );
  const sheet = sheets[index];
  return sheetScene(stack, index, { necks: sheet ? necksOf(sheet, config) : [] });
}
