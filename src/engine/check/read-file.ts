/** From the text of one file to its measured sheets. */

import { lookNow } from '../../base/checkpoint';
import { emptyDrawing, type ReadDrawing, readDrawingIncrementally } from '../../drawing/index';
import type { Drawing } from '../../drawing/types';
import { parseMarkup } from '../../markup/parse';
import { artworkKey } from '../../sheet/layer/artwork-key';
import type { FillOf } from '../../sheet/layer/fill-shapes';
import { mainPaint } from '../../sheet/layer/layers';
import { shapeRegion } from '../../sheet/layer/shape-region';
import { type Artwork, artworkOf, type MeasuredArtwork, measureArtwork, sheetOf } from '../../sheet/measure';
import type { LayerPaint } from '../../sheet/types';
import type { Answer } from '../cache/cache';
import {
  drawingNode,
  fileNode,
  fillNode,
  type HashedText,
  layersNode,
  markupNode,
  paintNode,
  sheetNode,
} from '../cache/nodes';
import { type Run, slotOf } from './run';
import type { Lack, Skipped } from './run-watch';
import type { PlannedGroup, PlannedLayer, ReadFile } from './stages';

/** Which layers a drawing is read as. */
export interface LayerPlan {
  /** Stands for all that `groupsOf` depends on besides the drawing. */
  readonly key: string;
  groupsOf(drawing: Drawing): readonly PlannedGroup[];
}

/**
 * Reads a text and measures its layers one by one, within the budget of the run: what that does not suffice for is left
 * out.
 * @param name of the file, as its project has it
 */
export function readFile(run: Run, name: string, text: HashedText, plan: LayerPlan): Answer<ReadFile> {
  run.watch.grant(text.text);
  const read = run.watch.part<ReadLayers | Unread>(
    'reading',
    true,
    () => readLayers(run, name, text, plan),
    (unread) => ({ unread }),
  );
  if (!('unread' in read)) return measureFile(run, name, read);
  return run.cache.ask(fileNode, { layers: undefined, sheets: [] }, () => unreadFile(text, read.unread));
}

interface Unread {
  readonly unread: Lack;
}

interface ReadLayers {
  readonly drawing: Drawing;
  readonly layers: Answer<readonly PlannedLayer[]>;
}

function readLayers(run: Run, name: string, text: HashedText, plan: LayerPlan): ReadLayers {
  const read = readText(run, name, text);
  const { drawing } = read.value;
  const layers = run.cache.ask(layersNode, { drawing: read, plan: plan.key }, () =>
    plan.groupsOf(drawing).map((group) => ({ group, key: artworkKey(group.shapes) })),
  );
  return { drawing, layers };
}

function unreadFile({ text }: HashedText, unread: Lack): ReadFile {
  const drawing = emptyDrawing({ text, root: undefined, children: [], problems: [] });
  return { text, drawing, unread, sheets: [], origins: [], skipped: [] };
}

function readText(run: Run, name: string, text: HashedText): Answer<ReadDrawing> {
  const markup = run.cache.ask(markupNode, text, () => parseMarkup(text.text));
  const { width, height } = run.config;
  const size = { ...(width === undefined ? {} : { width }), ...(height === undefined ? {} : { height }) };
  const read = (previous: ReadDrawing | undefined) => readDrawingIncrementally(markup.value, size, previous);
  return run.cache.ask(drawingNode, { markup, size }, read, slotOf(run, name));
}

function measureFile(run: Run, name: string, { drawing, layers }: ReadLayers): Answer<ReadFile> {
  const skipped: Skipped[] = [];
  const measured = layers.value.map((layer, i) => {
    const artwork = artworkOf(drawing, layer.group, run.config, layer.key.shapes);
    return run.watch.part<MeasuredLayer | undefined>(
      'measuring',
      i === layers.value.length - 1,
      () => measureLayer(run, `${name}#${i}`, layer, artwork),
      (lack) => void skipped.push(skippedLayer(layer, lack)),
    );
  });
  return run.cache.ask(fileNode, { layers, sheets: measured.map((layer) => layer?.sheet) }, () => {
    const done = measured.filter((layer) => layer !== undefined);
    return {
      text: drawing.document.text,
      drawing,
      unread: undefined,
      sheets: done.map(({ group, artwork, sheet, paint }) => sheetOf(drawing, group, artwork, sheet.value, paint)),
      origins: done.map(({ group: { entry }, sheet }) => ({ entry, measures: sheet.id })),
      skipped,
    };
  });
}

function skippedLayer({ group }: PlannedLayer, lack: Lack): Skipped {
  const [shape] = group.shapes;
  const { startTag: span } = group.element ?? shape?.element ?? {};
  return { name: `layer "${group.name}"`, lack, ...(span && { span }) };
}

interface MeasuredLayer extends PlannedLayer {
  readonly artwork: Artwork;
  readonly sheet: Answer<MeasuredArtwork>;
  readonly paint: LayerPaint;
}

function measureLayer(run: Run, place: string, layer: PlannedLayer, artwork: Artwork): MeasuredLayer {
  lookNow();
  const { group, key } = layer;
  const { cache, config, measuring } = run;
  // What was measured under another configuration is of no use to the next state of the layer.
  const slot = slotOf(run, `${place} ${measuring}`);
  const measure = (previous: MeasuredArtwork | undefined) => measureArtwork(artwork, config, previous, fillIn(run));
  const sheet = cache.ask(sheetNode, { key, artwork, measuring }, measure, slot);
  return { group, key, artwork, sheet, paint: paintOf(run, layer) };
}

/** So many curves take long enough to fill that it is worth remembering. */
const MANY_CURVES = 100;

function fillIn({ cache }: Run): FillOf {
  return (shape, key) => {
    const curves = shape.subpaths.reduce((sum, each) => sum + each.curves.length, 0);
    return curves < MANY_CURVES ? shapeRegion(shape) : cache.ask(fillNode, key, () => shapeRegion(shape)).value;
  };
}

function paintOf({ cache }: Run, { group, key }: PlannedLayer): LayerPaint {
  if (group.paint !== undefined) return { paint: group.paint, paintStated: true };
  return { paint: cache.ask(paintNode, key, () => mainPaint(group.shapes)).value };
}
