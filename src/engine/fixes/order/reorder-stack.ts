/** Another spray order of a stack: which file says the order, and the edits of it. */
import type { Report } from '../../../report/report';
import { movedLayers, type Order } from '../../../stack/order/best-order';
import type { TextEdit } from '../../../text/text';
import { groupsOfEntry, type SourcedEntry, sourcedEntries } from '../../check/project-layers';
import { reorderEntries, reorderLayers } from './reorder-layers';

/** Edits that put the layers into another order: all in one text. */
export interface OrderEdits {
  /** The project's name for a file, empty for one that stands alone; undefined for `tombolo.json`. */
  readonly file: string | undefined;
  readonly edits: readonly TextEdit[];
}

/**
 * @param report of a file of the stack
 * @param configText of the `tombolo.json` that names the layers, where the file is part of a project
 * @param order numbers of the stack's layers, first sprayed first
 * @param moved those that are taken out and put in elsewhere
 * @returns edits that were proven, or one sentence that says why there are none
 */
export function reorderStack(
  report: Report,
  configText: string | undefined,
  order: Order,
  moved: readonly number[] = movedLayers(order),
): OrderEdits | string {
  const { project } = report;
  if (!project || configText === undefined) return inFile('', report, order, moved);
  const places = placesInProject(report);
  if (order.length !== places.length) return NO_PLACE;
  const inner = new Map<SourcedEntry, number[]>();
  let last: SourcedEntry | undefined;
  for (const layer of order) {
    const place = places[layer];
    if (!place) return NO_PLACE;
    const { entry, number } = place;
    const known = inner.get(entry);
    if (known && last !== entry) return mixed(entry);
    if (known) known.push(number);
    else inner.set(entry, [number]);
    last = entry;
  }
  const changed = [...inner].filter(([, numbers]) => numbers.some((number, i) => number !== i));
  const entries = entryOrder([...inner.keys()], report);
  const inConfig = entries.some((entry, i) => entry !== i);
  const [only, ...others] = changed;
  if (others.length > 0 || (only && inConfig)) return SEVERAL_FILES;
  if (!only) return whereDone(undefined, reorderEntries(configText, entries));
  const [{ file = '' }, numbers] = only;
  const owner = project.report.files.get(file);
  if (!owner) return 'The file of these layers is not there any more.';
  const own = moved.flatMap((layer) => (places[layer]?.entry === only[0] ? [places[layer].number] : []));
  return inFile(file, owner, numbers, own);
}

const NO_PLACE = 'There is no such place in the order.';
const SEVERAL_FILES =
  'This order needs changes in several files: name each layer by its own #id in tombolo.json first.';

function mixed({ from }: SourcedEntry): string {
  return `tombolo.json names several layers together as "${from}": name each by its own #id to mix them with others.`;
}

function inFile(file: string, report: Report, order: Order, moved: readonly number[]): OrderEdits | string {
  return whereDone(file, reorderLayers(report, order, moved));
}

function whereDone(file: string | undefined, edits: readonly TextEdit[] | string): OrderEdits | string {
  return typeof edits === 'string' ? edits : { file, edits };
}

/** Where a layer of the stack comes from. */
interface Place {
  readonly entry: SourcedEntry;
  /** Which of the layers that the entry gives. */
  readonly number: number;
}

/** One for each layer of the stack, in the present order. */
function placesInProject({ project, settings }: Report): Place[] {
  return entriesOf(settings).flatMap((entry) => {
    const drawing = entry.file === undefined ? undefined : project?.report.files.get(entry.file)?.drawing;
    const groups = drawing ? groupsOfEntry(drawing, entry, settings.oneLayer) : [];
    return groups.map((_, number) => ({ entry, number }));
  });
}

/** Entries that give no layer stay where they are. */
function entryOrder(giving: readonly SourcedEntry[], { settings }: Report): number[] {
  const left = giving.map(({ index }) => index);
  const all = new Set(left);
  return entriesOf(settings).map(({ index }) => (all.has(index) ? (left.shift() ?? index) : index));
}

function entriesOf({ config }: Report['settings']): SourcedEntry[] {
  return config ? sourcedEntries(config) : [];
}
