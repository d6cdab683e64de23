/** Which file says the painting order of a stack, and the edits of it that give a layer another place. */
import { groupsOfEntry, type SourcedEntry, sourcedEntries } from '../../engine/check/project-layers';
import { reorderEntries, reorderLayers } from '../../engine/fixes/reorder-layers';
import type { Reordering, ReorderParams } from '../../protocol/views';
import type { LayerId } from '../../sheet/layer/layer-id';
import type { CheckedDocument, ProjectOfDocument } from '../documents/checked-document';

/** A `tombolo.json` that is open in the editor, as it stands there. */
export interface OpenConfig {
  readonly version: number;
  readonly text: string;
}

export function reordering(
  checked: CheckedDocument,
  { version, ...move }: Omit<ReorderParams, 'uri'>,
  openConfig?: OpenConfig,
): Reordering {
  const refuse = (refusal: string): Reordering => ({ version: checked.version, refusal });
  if (version !== checked.version) return refuse('The drawing has changed since; move the layer again.');
  const { project, report } = checked;
  const indexOf = (id: LayerId) => report.stack.layers.findIndex(({ sheet }) => sheet.layer.id === id);
  const [layer, to] = [indexOf(move.layer), indexOf(move.to)];
  if (!project) return reorderInFile(checked, layer, to);
  const places = placesInProject(project);
  const [from, target] = [places[layer], places[to]];
  if (!from || !target) return refuse('There is no such place in the order.');
  if (from.entry.index === target.entry.index) {
    const owner = project.documents.get(from.entry.file ?? '');
    return owner
      ? reorderInFile(owner, from.order, target.order)
      : refuse('The file of these layers is not there any more.');
  }
  if (from.count > 1 || target.count > 1) {
    const { entry } = from.count > 1 ? from : target;
    return refuse(
      `tombolo.json names several layers together as "${entry.from}": name each by its own #id to mix them ` +
        'with others.',
    );
  }
  return reorderInConfig(project, [from.entry.index, target.entry.index], checked.version, openConfig);
}

function reorderInFile({ uri, report, version }: CheckedDocument, from: number, to: number): Reordering {
  const edits = reorderLayers(report, from, to);
  return typeof edits === 'string' ? { version, refusal: edits } : { uri, version, edits };
}

function reorderInConfig(
  { config }: ProjectOfDocument,
  [from, to]: readonly [number, number],
  version: number,
  open: OpenConfig | undefined,
): Reordering {
  if (open && open.text !== config.text)
    return { version, refusal: 'tombolo.json has changed since; move the layer again.' };
  const edits = reorderEntries(config.text, from, to);
  if (typeof edits === 'string') return { version, refusal: edits };
  return { uri: config.uri, version: open?.version ?? 0, edits };
}

/** Where a layer of the stack comes from. */
interface Place {
  readonly entry: SourcedEntry;
  /** Which of the layers that the entry gives, and how many those are. */
  readonly order: number;
  readonly count: number;
}

/** One for each layer of the stack, in painting order. */
function placesInProject({ config, documents }: ProjectOfDocument): Place[] {
  return sourcedEntries(config.config).flatMap((entry) => {
    const drawing = entry.file === undefined ? undefined : documents.get(entry.file)?.report.drawing;
    const groups = drawing ? groupsOfEntry(drawing, entry) : [];
    return groups.map((_, order) => ({ entry, order, count: groups.length }));
  });
}
