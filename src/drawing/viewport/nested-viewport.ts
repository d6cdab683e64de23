/** Viewports inside the drawing: nested `svg`, and `symbol` or `svg` drawn by a `use`. */
import type { Matrix } from '../../geometry/base/curve-types';
import { multiply, translation } from '../../geometry/base/matrix';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { addClips, makeClip } from '../clip/clips';
import { traceRectangle } from '../outline/basic-shapes';
import { OutlineBuilder } from '../outline/outline-builder';
import type { Problems } from '../problems';
import type { Scope } from '../scope';
import type { Styles } from '../style/styles';
import type { Clip } from '../types';
import { GeometryValues } from './geometry-values';
import type { ViewportSize } from './units';
import { DEFAULT_ASPECT_RATIO, parseAspectRatio, parseViewBoxAttribute, viewportTransform } from './viewport';

/** The scope of what stands in the viewport; undefined where it has no size, so that nothing in it is drawn. */
export function enterViewport(
  element: ElementNode,
  scope: Scope,
  styles: Styles,
  problems: Problems,
): Scope | undefined {
  const size = scope.useSize;
  const outer = { ...scope, useSize: undefined };
  const declared = styles.declaredFor(element);
  const lengths = { declared, style: scope.style, viewport: scope.viewBox };
  const values = new GeometryValues(element, lengths, problems);
  const x = values.length('x', 'x') ?? 0;
  const y = values.length('y', 'y') ?? 0;
  const width = size?.width ?? values.size('width', 'x') ?? scope.viewBox.width;
  const height = size?.height ?? values.size('height', 'y') ?? scope.viewBox.height;
  const boxAttribute = attributeOf(element, 'viewBox');
  const box = boxAttribute && parseViewBoxAttribute(boxAttribute.value);
  if (!(width > 0) || !(height > 0) || (box && !(box.width > 0 && box.height > 0))) return undefined;
  const placed = multiply(scope.toMm, translation(x, y));
  const clips =
    scope.style.own.overflow === 'visible'
      ? scope.clips
      : addClips(scope.clips, [viewportClip(placed, { width, height })], element, problems);
  if (!box) return { ...outer, toMm: placed, viewBox: { x: 0, y: 0, width, height }, clips };
  const ratioText = attributeOf(element, 'preserveAspectRatio')?.value;
  const ratio = (ratioText === undefined ? undefined : parseAspectRatio(ratioText)) ?? DEFAULT_ASPECT_RATIO;
  const fit = viewportTransform(box, { width, height }, ratio);
  return { ...outer, toMm: multiply(placed, fit), viewBox: box, clips };
}

/** The clip of a viewport whose corner is the origin of `toMm`. */
export function viewportClip(toMm: Matrix, size: ViewportSize): Clip {
  const builder = new OutlineBuilder(toMm);
  traceRectangle({ x: 0, y: 0, ...size, radiusX: 0, radiusY: 0 }, { from: 0, to: 0 }, builder);
  return makeClip([{ subpaths: builder.done(), fillRule: 'nonzero' }]);
}
