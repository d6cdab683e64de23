/** From the text of one file to its measured sheets. */

import type { Config } from '../../config/types';
import { readDrawing } from '../../drawing/index';
import type { Drawing } from '../../drawing/types';
import { parseMarkup } from '../../markup/parse';
import type { Report } from '../../report/report';
import { mainPaint, type ShapeGroup } from '../../sheet/layer/layers';
import { measureSheet } from '../../sheet/measure';
import type { Sheet } from '../../sheet/types';

/** A file that was read and measured, before anything is checked. */
export interface ReadFile {
  readonly text: string;
  readonly drawing: Drawing;
  readonly sheets: readonly Sheet[];
  /** What there was no time for. */
  readonly skipped: readonly string[];
}

/** The shapes of a layer, with the paint that was stated for it elsewhere. */
export type PaintedGroup = ShapeGroup & { readonly paint?: string | undefined };

export function drawingOf(text: string, { width, height }: Config, earlier?: Drawing): Drawing {
  const size = { ...(width === undefined ? {} : { width }), ...(height === undefined ? {} : { height }) };
  return readDrawing(parseMarkup(text), size, earlier);
}

/**
 * Measures the layers of a drawing one by one.
 * @param known sheets that were measured under the same configuration; layers that still draw the same keep them
 * @param late whether the time for the run is over: what is not begun by then is left out
 */
export function measureGroups(
  drawing: Drawing,
  groups: readonly PaintedGroup[],
  config: Config,
  known: readonly Sheet[],
  late: () => boolean,
): ReadFile {
  const left = [...known];
  const skipped: string[] = [];
  const sheets: Sheet[] = [];
  groups.forEach((group, i) => {
    if (late()) return void skipped.push(`layer "${group.name}"`);
    const named = left.findIndex(({ layer }) => layer.name === group.name);
    const [earlier] = named >= 0 ? left.splice(named, 1) : known.length === groups.length ? known.slice(i, i + 1) : [];
    sheets.push(painted(measureSheet(drawing, group, config, earlier), group.paint));
  });
  return { text: drawing.document.text, drawing, sheets, skipped };
}

function painted(sheet: Sheet, stated: string | undefined): Sheet {
  const { layer } = sheet;
  if (stated !== undefined) return { ...sheet, layer: { ...layer, paint: stated, paintStated: true } };
  if (!layer.paintStated) return sheet;
  return { ...sheet, layer: { ...layer, paint: mainPaint(layer.shapes), paintStated: false } };
}

/** Sheets of an earlier report, where they were measured as they would be now. */
export function knownSheets(earlier: Report | undefined, alike: boolean): readonly Sheet[] {
  return earlier && alike ? earlier.sheets : [];
}
