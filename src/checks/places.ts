/** The text that belongs to a place on a sheet. */
import type { Point } from '../geometry/base/curve-types';
import type { Ring } from '../geometry/base/polygon-types';
import type { CurveSource } from '../sheet/source-index';
import type { Sheet } from '../sheet/types';
import type { Span } from '../text/text';
import type { Stencil } from './check';
import type { Finding } from './finding';

/** What leads from a sheet back to its text. */
export type Traced = Pick<Stencil, 'drawing' | 'sources'>;

/** The command that drew the edge at a point, as seen from `facing`; else the layer's name, else the root's. */
export function spanAt(stencil: Traced, sheet: Sheet, point: Point, facing?: Point): Span {
  return stencil.sources(sheet).at(point, facing)?.span ?? layerSpan(stencil, sheet);
}

/** Which layer a finding lies in. */
export function inLayer({ layer }: Sheet): Required<Pick<Finding, 'layer' | 'layerId'>> {
  return { layer: layer.name, layerId: layer.id };
}

/** The name in the layer's start tag: short, and where the layer begins. */
export function layerSpan(stencil: Traced, sheet: Sheet): Span {
  return sheet.layer.element?.nameSpan ?? rootSpan(stencil);
}

/** The name in the root's start tag. */
export function rootSpan(stencil: Traced): Span {
  const root = stencil.drawing.document.root;
  return root?.nameSpan ?? { from: 0, to: Math.min(1, stencil.drawing.document.text.length) };
}

/**
 * The text of a ring's own contour: from the first to the last of the commands that drew it, within the one chain
 * that drew most of it.
 */
export function contourSpan(stencil: Traced, sheet: Sheet, ring: Ring): Span {
  const chains = new Map<string, CurveSource[]>();
  for (const source of stencil.sources(sheet).along(ring)) {
    const key = `${source.shape.element.span.from}/${source.shape.part}/${source.subpath}`;
    const chain = chains.get(key);
    if (chain) chain.push(source);
    else chains.set(key, [source]);
  }
  const [longest] = [...chains.values()].sort((a, b) => b.length - a.length);
  if (!longest) return layerSpan(stencil, sheet);
  return {
    from: Math.min(...longest.map((source) => source.span.from)),
    to: Math.max(...longest.map((source) => source.span.to)),
  };
}
