/** From the text of one file to its measured sheets. */

import type { Config } from '../../config/types';
import { emptyDrawing, readDrawing } from '../../drawing/index';
import type { Drawing } from '../../drawing/types';
import { lookNow, type StopReason } from '../../geometry/base/checkpoint';
import { parseMarkup } from '../../markup/parse';
import type { Report } from '../../report/report';
import { mainPaint, type ShapeGroup } from '../../sheet/layer/layers';
import { measureSheet } from '../../sheet/measure';
import type { Sheet } from '../../sheet/types';
import type { RunWatch, Skipped } from './run-watch';

/** The text of one file as it was read. */
export interface ReadText {
  /** Empty where it could not be read within the budget. */
  readonly drawing: Drawing;
  /** What was lacking to read the text. */
  readonly unread: StopReason | undefined;
}

/** A file that was read and measured, before anything is checked. */
export interface ReadFile extends ReadText {
  readonly text: string;
  readonly sheets: readonly Sheet[];
  /** Layers that there was no time or no memory for. */
  readonly skipped: readonly SkippedLayer[];
}

interface SkippedLayer extends Skipped {
  /** Which of the groups that were to be measured. */
  readonly group: number;
}

/** The shapes of a layer, with the paint that was stated for it elsewhere. */
export type PaintedGroup = ShapeGroup & { readonly paint?: string | undefined };

/** Reads a text within the budget of the run. */
export function readText(text: string, { width, height }: Config, watch: RunWatch, earlier?: Drawing): ReadText {
  const size = { ...(width === undefined ? {} : { width }), ...(height === undefined ? {} : { height }) };
  return watch.part<ReadText>(
    () => ({ drawing: readDrawing(parseMarkup(text), size, earlier), unread: undefined }),
    (unread) => ({ drawing: emptyDrawing({ text, root: undefined, children: [], problems: [] }), unread }),
  );
}

/**
 * Measures the layers of a drawing one by one; those that the budget does not suffice for are left out.
 * @param known sheets that were measured under the same configuration; layers that still draw the same keep them
 */
export function measureGroups(
  { drawing, unread }: ReadText,
  groups: readonly PaintedGroup[],
  config: Config,
  known: readonly Sheet[],
  watch: RunWatch,
): ReadFile {
  const left = [...known];
  const skipped: SkippedLayer[] = [];
  const sheets: Sheet[] = [];
  const measure = (group: PaintedGroup, earlier: Sheet | undefined): void => {
    lookNow();
    sheets.push(painted(measureSheet(drawing, group, config, earlier), group.paint));
  };
  groups.forEach((group, i) => {
    if (unread) return;
    const named = left.findIndex(({ layer }) => layer.name === group.name);
    const [earlier] = named >= 0 ? left.splice(named, 1) : known.length === groups.length ? known.slice(i, i + 1) : [];
    watch.part(
      () => measure(group, earlier),
      (reason) => void skipped.push({ name: `layer "${group.name}"`, reason, group: i }),
    );
  });
  return { text: drawing.document.text, drawing, unread, sheets, skipped };
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
