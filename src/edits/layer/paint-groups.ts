/** Writes a drawing that is taken apart by paint as groups, one for each paint: then the groups say the order. */
import { attributeOf, childElements, isElement, prefixOf } from '../../markup/query';
import type { ElementNode, MarkupNode } from '../../markup/tree';
import { LAYERING_ATTRIBUTE } from '../../sheet/layer/layering';
import type { Layer } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { indentBefore, withBlankBefore } from '../element/element-text';
import type { EditResult } from '../element/result';
import { escaped } from './copied-text';

const TWO_COLOURS = 'A shape is drawn in two colours, as a fill and a line: make a shape of each first.';
const NO_GROUP = 'An element that is no <g> holds shapes of several colours: put each colour into a <g> first.';

/**
 * Edits that put the shapes of each layer into a group that is called as the layer is. A group that holds several colours is
 * written once for each, with the shapes of that colour. White space and comments go with the element behind them.
 * @param root of the document
 * @param layers all of the file, each a paint of it, in the order in which the groups are to stand
 */
export function groupByPaint(text: string, root: ElementNode, layers: readonly Layer[]): EditResult {
  const layersOf = layersByElement(layers);
  const drawn = childElements(root).filter((child) => layersOf.has(child));
  const [first, last] = [drawn[0], drawn.at(-1)];
  const [mixed] = [...layersOf.keys()].filter((element) => element !== root && isMixed(element, layersOf));
  if (mixed) return { refusal: childElements(mixed).length > 0 ? NO_GROUP : TWO_COLOURS };
  if (!first || !last) return { edits: [] };
  const nodes = root.children.slice(root.children.indexOf(first), root.children.indexOf(last) + 1);
  const indent = indentBefore(text, first.span.from);
  const parts = new PaintParts(text, layersOf);
  const name = `${prefixOf(first)}g`;
  const groups = layers.map((layer) => {
    const inner = parts.of(nodes, layer).trimStart();
    return `<${name} aria-label="${escaped(layer.name)}">${indent}${inner}${indent}</${name}>`;
  });
  // Style sheets and definitions among the shapes stay before all of them.
  const others = parts.of(nodes, undefined).trim();
  const blocks = [...(others ? [others] : []), ...groups];
  return {
    edits: [layeringEdit(text, root), { span: { from: first.span.from, to: last.span.to }, text: blocks.join(indent) }],
  };
}

/** That the groups are the layers, whatever `tombolo.json` says of files that say nothing. */
function layeringEdit(text: string, root: ElementNode): TextEdit {
  const stated = attributeOf(root, LAYERING_ATTRIBUTE);
  if (stated) return { span: withBlankBefore(text, stated.span), text: '' };
  const at = root.nameSpan.to;
  return { span: { from: at, to: at }, text: ` ${LAYERING_ATTRIBUTE}="inner-groups"` };
}

type LayersByElement = ReadonlyMap<ElementNode, ReadonlySet<Layer>>;

/** Whether an element cannot be taken apart although it draws several layers. */
function isMixed(element: ElementNode, layersOf: LayersByElement): boolean {
  const many = (layersOf.get(element)?.size ?? 0) > 1;
  return many && (element.localName !== 'g' || !element.endTag);
}

/** The text of a drawing, layer by layer. */
class PaintParts {
  private readonly text: string;
  private readonly layersOf: LayersByElement;
  /** Groups that were written once: an id is given to the first. */
  private readonly written = new Set<ElementNode>();

  constructor(text: string, layersOf: LayersByElement) {
    this.text = text;
    this.layersOf = layersOf;
  }

  /** What some nodes have of a layer; without one, the elements that draw nothing. */
  of(nodes: readonly MarkupNode[], layer: Layer | undefined): string {
    let [lead, part] = ['', ''];
    for (const node of nodes) {
      if (!isElement(node)) {
        lead += this.slice(node.span);
        continue;
      }
      const layers = this.layersOf.get(node);
      if (layer ? layers?.has(layer) : !layers)
        part += lead + (layer ? this.elementFor(node, layer) : this.slice(node.span));
      lead = '';
    }
    return part;
  }

  private elementFor(element: ElementNode, layer: Layer): string {
    const { startTag, endTag, span, children } = element;
    if (this.layersOf.get(element)?.size === 1 || !endTag) return this.slice(span);
    const isFirst = !this.written.has(element);
    this.written.add(element);
    const tag = isFirst ? this.slice(startTag) : this.withoutId(element);
    // What is drawn by reference, and titles, stand in the first.
    const others = isFirst ? this.of(children, undefined) : '';
    return `${tag}${others}${this.of(children, layer)}${indentBefore(this.text, endTag.from)}${this.slice(endTag)}`;
  }

  private withoutId({ startTag, attributes }: ElementNode): string {
    const id = attributes.find(({ name }) => name === 'id');
    if (!id) return this.slice(startTag);
    const gone = withBlankBefore(this.text, id.span);
    return this.text.slice(startTag.from, gone.from) + this.text.slice(gone.to, startTag.to);
  }

  private slice({ from, to }: { readonly from: number; readonly to: number }): string {
    return this.text.slice(from, to);
  }
}

/** For each element that something is drawn in, the layers that this belongs to. */
function layersByElement(layers: readonly Layer[]): Map<ElementNode, Set<Layer>> {
  const found = new Map<ElementNode, Set<Layer>>();
  for (const layer of layers) {
    for (const { element, instances } of layer.shapes) {
      for (let place: ElementNode | undefined = instances[0] ?? element; place; place = place.parent) {
        const own = found.get(place);
        if (own) own.add(layer);
        else found.set(place, new Set([layer]));
      }
    }
  }
  return found;
}
