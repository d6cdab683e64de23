/** What the entries of `layers` mean: which file, which element of it, and which shapes are then cut as one layer. */

import { defined } from '../../base/defined';
import type { Config, LayerEntry } from '../../config/types';
import type { Drawing, Shape } from '../../drawing/types';
import { allElements, ancestors, attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import type { LayerFault } from '../../report/report';
import { layerId } from '../../sheet/layer/layer-id';
import { groupShapes, type ShapeGroup, splitAsStated, statedName } from '../../sheet/layer/layers';
import { secondSheetsApart, secondSheetsOf } from '../../sheet/layer/second-sheets';
import { MARKUP_ROOM, quoted } from '../../text/wording';

/** An entry of `layers`, with its source taken apart. */
export interface SourcedEntry extends LayerEntry {
  /** Where it stands in `layers`. */
  readonly index: number;
  /** Relative to `tombolo.json`, without `.` and needless `..`; undefined where it is no such path. */
  readonly file: string | undefined;
  readonly id: string | undefined;
  /** The elements of the same file that other entries name. */
  readonly apart: readonly string[];
}

export function sourcedEntries({ layers }: Config): SourcedEntry[] {
  const sources = layers.map(({ from }) => splitSource(from));
  return layers.map((entry, index) => {
    const { file, id } = defined(sources[index]);
    const others = sources.flatMap((other, i) => (i !== index && other.file === file ? (other.id ?? []) : []));
    return { ...entry, index, file, id, apart: others };
  });
}

/** The files that a project names, in the order of first mention: relative to its `tombolo.json`, with `/`. */
export function projectFiles(config: Config): string[] {
  const files = sourcedEntries(config)
    .map(({ file }) => file)
    .filter((file) => file !== undefined);
  return [...new Set(files)];
}

/** `heron.svg#body` is the element `body` of `heron.svg`; a `#` in a name that ends in `.svg` belongs to the name. */
function splitSource(from: string): { file: string | undefined; id: string | undefined } {
  const plain = /\.svg$/i.test(from) ? undefined : /^(.*)#(.*)$/s.exec(from);
  const [, file = from, id] = /^(.*\.svg)#(.*)$/is.exec(from) ?? plain ?? [];
  return { file: relativePath(file), id };
}

/** Only paths that start from the project's folder: anything else could lead to another machine. */
function relativePath(path: string): string | undefined {
  if (/^$|^[\\/]|^[a-z][a-z+.-]*:|\0/i.test(path)) return undefined;
  const parts: string[] = [];
  for (const part of path.split(/[\\/]/)) {
    if (part === '' || part === '.') continue;
    if (part === '..' && parts.length > 0 && parts.at(-1) !== '..') parts.pop();
    else parts.push(part);
  }
  return parts.length > 0 ? parts.join('/') : undefined;
}

/**
 * The layers that an entry names: its element, else the whole file, which is one layer where the entry states a name
 * or a paint, and otherwise all the layers that the file has by itself. Second sheets that the drawing has for one layer come
 * with it. Their ids are those within the entry.
 */
export function groupsOfEntry(drawing: Drawing, entry: SourcedEntry, oneLayer = false): ShapeGroup[] {
  if (entry.id !== undefined) return groupOfElement(drawing, entry, entry.id);
  const single = oneLayer || entry.name !== undefined || entry.paint !== undefined;
  const fallback = entry.file?.replace(/^.*\//, '').replace(/\.svg$/i, '') || 'stencil';
  const file = entry.file ?? '';
  const groups = groupShapes(drawing, { oneLayer: single, fallback, file });
  if (!single) return [...groups];
  const whole = groups.map((group) => ({ ...group, name: entry.name ?? group.name }));
  return numbered(file, oneLayer ? whole : whole.flatMap(secondSheetsApart));
}

function groupOfElement(drawing: Drawing, entry: SourcedEntry, id: string): ShapeGroup[] {
  const element = elementWithId(drawing, id);
  const shapes = element ? drawing.shapes.filter((shape) => isWithin(shape, element)) : [];
  if (!element || shapes.length === 0) return [];
  const part = { element, name: entry.name ?? statedName(element) ?? id, shapes };
  const parts = entry.paint === undefined ? splitAsStated(part) : [part];
  const seconds = secondSheetsOf(drawing, part, id).filter((each) => !isNamed(each.element, entry));
  return numbered(entry.file ?? '', parts.length === 1 ? [...parts, ...seconds] : parts);
}

function isNamed(element: ElementNode | undefined, { apart }: SourcedEntry): boolean {
  const id = element && attributeOf(element, 'id')?.value;
  return id !== undefined && apart.includes(id);
}

function numbered(file: string, parts: readonly Omit<ShapeGroup, 'id'>[]): ShapeGroup[] {
  return parts.map((part, i) => ({ ...part, id: layerId(file, i) }));
}

function elementWithId({ document }: Drawing, id: string): ElementNode | undefined {
  for (const element of allElements(document)) if (attributeOf(element, 'id')?.value === id) return element;
  return undefined;
}

/** Whether a shape is drawn inside the element, there or by a `use` that stands there. */
function isWithin({ element, instances }: Shape, group: ElementNode): boolean {
  const place = instances[0] ?? element;
  if (place === group) return true;
  for (const ancestor of ancestors(place)) if (ancestor === group) return true;
  return false;
}

/** Why an entry gives no layer; undefined where it gives one. */
export function faultOf(entry: SourcedEntry, drawing: Drawing | undefined): LayerFault | undefined {
  const { from, file, id } = entry;
  if (file === undefined) {
    const message = 'Not a path from this tombolo.json, written with /: "sky.svg" or "layers/heron.svg#body".';
    return { from, message, severity: 'error' };
  }
  if (!drawing) {
    const name = inMarkup(file);
    const lack = file.startsWith('../')
      ? `Outside this workspace, or not readable: ${name}`
      : `No readable file ${name}`;
    const message = `${lack}: the stack is checked without it.`;
    const detail =
      'Files are looked for beside this tombolo.json and in the workspace around it, links followed. ' +
      'Write the file there, or remove this layer.';
    return { from, message, detail, severity: 'error' };
  }
  if (id === undefined || groupOfElement(drawing, entry, id).length > 0) return undefined;
  if (elementWithId(drawing, id)) {
    const message = `Element ${inMarkup(id)} draws nothing: this layer has no sheet.`;
    return { from, message, severity: 'warning' };
  }
  return {
    from,
    message: `No element has the id ${inMarkup(id)}: the stack is checked without it.`,
    severity: 'error',
  };
}

function inMarkup(written: string): string {
  return quoted([written], MARKUP_ROOM)[0] ?? '';
}
