/** The start tags of what a drawing draws, and the layer of each: enough to say what is under the pointer. */
import { drawnThrough } from '../../drawing/drawn-through';
import type { ElementNode } from '../../markup/tree';
import type { LayerFact, TagFacts } from '../../protocol/facts';
import type { Report } from '../../report/report';

/** An index that no layer has. */
const NO_LAYER = 0xffffffff;

export function tagFactsOf({ drawing, sheets }: Report): TagFacts {
  const layerOf = layersByElement(sheets.map(({ layer }) => layer.shapes.flatMap(drawnThrough)));
  const elements = [...new Set(drawing.shapes.flatMap(drawnThrough))];
  const tags = elements.sort((a, b) => a.startTag.from - b.startTag.from);
  return {
    from: Uint32Array.from(tags, ({ startTag }) => startTag.from),
    to: Uint32Array.from(tags, ({ startTag }) => startTag.to),
    layer: Uint32Array.from(tags, (element) => layerOf.get(element) ?? NO_LAYER),
    layers: sheets.map(({ layer: { name, paint, reading } }): LayerFact => ({ name, paint, reading })),
  };
}

/** The index of the layer that an element draws in, where that is only one. */
function layersByElement(layers: readonly (readonly ElementNode[])[]): ReadonlyMap<ElementNode, number> {
  const found = new Map<ElementNode, number>();
  layers.forEach((elements, layer) => {
    for (const element of elements) found.set(element, (found.get(element) ?? layer) === layer ? layer : NO_LAYER);
  });
  return found;
}
