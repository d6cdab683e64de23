/** The edits that give a layer of a stack another place, or all of them the order with the fewest islands. */
import { reorderStack, sprayOrder } from '../../engine/index';
import type { BestOrderAnswer, Reordering, ReorderParams } from '../../protocol/views';
import type { LayerId } from '../../sheet/layer/layer-id';
import type { CheckedDocument } from '../documents/checked-document';

/** A `tombolo.json` that is open in the editor, as it stands there. */
export interface OpenConfig {
  readonly version: number;
  readonly text: string;
}

/** One layer takes the place of another. */
export function reordering(
  checked: CheckedDocument,
  { version, ...move }: Omit<ReorderParams, 'uri'>,
  openConfig?: OpenConfig,
): Reordering {
  if (version !== checked.version)
    return { version: checked.version, refusal: 'The drawing has changed since; move the layer again.' };
  const { layers } = checked.report.stack;
  const indexOf = (id: LayerId) => layers.findIndex(({ sheet }) => sheet.layer.id === id);
  const [layer, to] = [indexOf(move.layer), indexOf(move.to)];
  const others = layers.map((_, index) => index).filter((index) => index !== layer);
  const order = layer < 0 || to < 0 ? [] : [...others.slice(0, to), layer, ...others.slice(to)];
  return inOrder(checked, order, [layer], openConfig);
}

/** The order with the fewest islands, with the edits that make it. */
export function bestOrder(checked: CheckedDocument, openConfig?: OpenConfig): BestOrderAnswer {
  const { report, version } = checked;
  const best = sprayOrder(report);
  if (typeof best === 'string') return { version, refusal: best };
  const { order, moved, islands, before, after } = best;
  const { layers } = report.stack;
  return {
    version,
    islands,
    before,
    after,
    order: order.map((layer) => ({
      name: layers[layer]?.sheet.layer.name ?? '',
      now: moved.includes(layer) ? layer + 1 : undefined,
    })),
    change: moved.length === 0 ? undefined : inOrder(checked, order, moved, openConfig),
  };
}

/**
 * The layers of the stack in another order.
 * @param order numbers of the stack's layers, first sprayed first
 * @param moved those that are taken out and put in elsewhere
 */
function inOrder(
  { report, project, uri, version }: CheckedDocument,
  order: readonly number[],
  moved: readonly number[],
  openConfig?: OpenConfig,
): Reordering {
  const answer = reorderStack(report, project?.config.text, order, moved);
  if (typeof answer === 'string') return { version, refusal: answer };
  const { file, edits } = answer;
  if (!project) return { uri, version, edits };
  if (file === undefined) {
    if (openConfig && openConfig.text !== project.config.text)
      return { version, refusal: 'tombolo.json has changed since; move the layer again.' };
    return { uri: project.config.uri, version: openConfig?.version ?? 0, edits };
  }
  const owner = project.documents.get(file);
  return owner
    ? { uri: owner.uri, version: owner.version, edits }
    : { version, refusal: 'The file of these layers is not there any more.' };
}
