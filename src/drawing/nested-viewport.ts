/** Viewports inside the drawing: nested `svg`, and `symbol` or `svg` drawn by a `use`. */
import type { Matrix } from '../geometry/curve';
import { multiply, translation } from '../geometry/matrix';
import type { ElementNode } from '../markup/tree';
import { traceRectangle } from './basic-shapes';
import { MAX_NESTING } from './budget';
import { attributeOf } from './document-index';
import type { Clip, Subpath } from './drawing';
import { GeometryValues } from './geometry-values';
import { OutlineBuilder } from './outline-builder';
import type { Problems } from './problems';
import type { Scope } from './scope';
import type { Styles } from './style/styles';
import { DEFAULT_ASPECT_RATIO, parseAspectRatio, parseViewBox, viewportTransform } from './viewport';

/** The scope of what stands in the viewport; undefined where it has no size, so that nothing in it is drawn. */
export function enterViewport(
  element: ElementNode, scope: Scope, styles: Styles, problems: Problems,
): Scope | undefined {
  const { useSize: size, ...outer } = scope;
  const declared = styles.declaredFor(element);
  const lengths = { declared, style: scope.style, viewport: scope.viewBox };
  const values = new GeometryValues(element, lengths, problems);
  const x = values.length('x', 'x') ?? 0;
  const y = values.length('y', 'y') ?? 0;
  const width = size?.width ?? values.size('width', 'x') ?? scope.viewBox.width;
  const height = size?.height ?? values.size('height', 'y') ?? scope.viewBox.height;
  const boxAttribute = attributeOf(element, 'viewBox');
  const box = boxAttribute && parseViewBox(boxAttribute.value);
  if (!(width > 0) || !(height > 0) || (box && !(box.width > 0 && box.height > 0))) return undefined;
  const placed = multiply(scope.toMm, translation(x, y));
  const clips = scope.style.own.overflow === 'visible'
    ? scope.clips
    : withClip(scope, boxClip(placed, { width, height, x: 0, y: 0 }), element, problems);
  if (!box) return { ...outer, toMm: placed, viewBox: { x: 0, y: 0, width, height }, clips };
  const ratioText = attributeOf(element, 'preserveAspectRatio')?.value;
  const ratio = (ratioText === undefined ? undefined : parseAspectRatio(ratioText)) ?? DEFAULT_ASPECT_RATIO;
  const fit = viewportTransform(box, { width, height }, ratio);
  return { ...outer, toMm: multiply(placed, fit), viewBox: box, clips };
}

/** The scope's clips and one more; beyond the bound on nesting the clip is left out and that is reported. */
export function withClip(scope: Scope, clip: Clip, element: ElementNode, problems: Problems): readonly Clip[] {
  if (scope.clips.length < MAX_NESTING) return [...scope.clips, clip];
  const message = `More than ${MAX_NESTING} clips within each other are not followed; this one is not applied.`;
  problems.add('unsupported', 'warning', message, element.startTag);
  return scope.clips;
}

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The clip of a rectangle in user units; its `box` is set where the map keeps it upright. */
function boxClip(toMm: Matrix, rectangle: Rectangle): Clip {
  const builder = new OutlineBuilder(toMm);
  traceRectangle({ ...rectangle, radiusX: 0, radiusY: 0 }, { from: 0, to: 0 }, builder);
  const subpaths = builder.done();
  const parts = [{ subpaths, fillRule: 'nonzero' as const }];
  const upright = (toMm.b === 0 && toMm.c === 0) || (toMm.a === 0 && toMm.d === 0);
  return upright ? { parts, box: boxOf(subpaths) } : { parts };
}

function boxOf(subpaths: readonly Subpath[]): NonNullable<Clip['box']> {
  const points = subpaths.flatMap(({ curves }) => curves.map((curve) => curve.start));
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}
