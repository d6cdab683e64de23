/** The outline of a graphics element, in sheet millimetres. */
import type { Matrix } from '../../geometry/base/curve-types';
import { readPoints } from '../../markup/number-lists';
import { attributeOf } from '../../markup/query';
import type { Attribute, ElementNode } from '../../markup/tree';
import type { Span } from '../../text/text';
import type { Problems } from '../problems';
import { sourceAttribute } from '../style/cascade';
import type { Subpath } from '../types';
import { GeometryValues, type LengthScope } from '../viewport/geometry-values';
import { traceEllipse, tracePoints, traceRectangle } from './basic-shapes';
import { locate, type OutlineSource } from './located-subpath';
import { OutlineBuilder } from './outline-builder';
import type { OutlineCache, TracedOutline, Tracer } from './outline-cache';
import { tracePath } from './path-curves';

const GRAPHICS: ReadonlySet<string> = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon']);

/** Whether elements of this name have an outline. */
export function isGraphicsElement(localName: string): boolean {
  return GRAPHICS.has(localName);
}

/** What reading an element's outline needs beside the element and its map. */
export interface OutlineServices {
  readonly problems: Problems;
  readonly outlines: OutlineCache;
}

/** The element's outline, every curve mapped by `toMm` and knowing its text. Empty where nothing is drawn. */
export function outlineElement(
  element: ElementNode,
  scope: LengthScope,
  toMm: Matrix,
  services: OutlineServices,
): readonly Subpath[] {
  switch (element.localName) {
    case 'path':
      return outlinePath(element, scope, toMm, services);
    case 'polyline':
      return outlinePoints(element, 'polyline', toMm, services);
    case 'polygon':
      return outlinePoints(element, 'polygon', toMm, services);
    default:
      return outlineShape(element, new GeometryValues(element, scope, services.problems), toMm);
  }
}

function outlineShape(element: ElementNode, values: GeometryValues, toMm: Matrix): readonly Subpath[] {
  const builder = new OutlineBuilder(toMm);
  const span = element.startTag;
  switch (element.localName) {
    case 'rect':
      outlineRectangle(values, span, builder);
      break;
    case 'circle': {
      const radius = values.size('r', 'diagonal') ?? 0;
      traceEllipse(values.length('cx', 'x') ?? 0, values.length('cy', 'y') ?? 0, radius, radius, span, builder);
      break;
    }
    case 'ellipse': {
      const radiusX = values.size('rx', 'x');
      const radiusY = values.size('ry', 'y');
      const [x, y] = [values.length('cx', 'x') ?? 0, values.length('cy', 'y') ?? 0];
      traceEllipse(x, y, radiusX ?? radiusY ?? 0, radiusY ?? radiusX ?? 0, span, builder);
      break;
    }
    case 'line':
      builder.setPlace(span.from, span.to);
      builder.moveTo(values.length('x1', 'x') ?? 0, values.length('y1', 'y') ?? 0);
      builder.lineTo(values.length('x2', 'x') ?? 0, values.length('y2', 'y') ?? 0);
      break;
  }
  return builder.done();
}

function outlineRectangle(values: GeometryValues, span: Span, builder: OutlineBuilder): void {
  traceRectangle(
    {
      x: values.length('x', 'x') ?? 0,
      y: values.length('y', 'y') ?? 0,
      width: values.size('width', 'x') ?? 0,
      height: values.size('height', 'y') ?? 0,
      radiusX: values.size('rx', 'x'),
      radiusY: values.size('ry', 'y'),
    },
    span,
    builder,
  );
}

function outlinePoints(
  element: ElementNode,
  kind: 'polyline' | 'polygon',
  toMm: Matrix,
  services: OutlineServices,
): readonly Subpath[] {
  const attribute = attributeOf(element, 'points');
  if (!attribute) return [];
  const trace = kind === 'polygon' ? tracePolygon : tracePolyline;
  const outline = services.outlines.recall(kind, attribute.value, toMm, trace);
  return locateOutline(outline, 'The points up to here are drawn.', attribute, services.problems);
}

const tracePolygon: Tracer = (text, builder) => traceList(text, true, builder);
const tracePolyline: Tracer = (text, builder) => traceList(text, false, builder);

function traceList(text: string, closed: boolean, builder: OutlineBuilder): ReturnType<Tracer> {
  const { values, places, error } = readPoints(text);
  tracePoints(values, places, closed, builder);
  return error;
}

/** The path data of a `path` from `d`, or from the CSS property of that name, whose value has no places of its own. */
function pathDataOf(element: ElementNode, { declared }: LengthScope): Attribute | StyledData | undefined {
  const attribute = attributeOf(element, 'd');
  const css = declared.get('d');
  if (!css) return attribute;
  const quoted = /^\s*path\(\s*(?:"([^"]*)"|'([^']*)')\s*\)\s*$/i.exec(css.value);
  if (!quoted) return css.value.trim() === 'none' ? undefined : attribute;
  const whole = sourceAttribute(element, 'd', css)?.valueSpan ?? element.nameSpan;
  return { value: quoted[1] ?? quoted[2] ?? '', textOffset: (index) => (index === 0 ? whole.from : whole.to) };
}

type StyledData = OutlineSource & Pick<Attribute, 'value'>;

function outlinePath(
  element: ElementNode,
  scope: LengthScope,
  toMm: Matrix,
  services: OutlineServices,
): readonly Subpath[] {
  const data = pathDataOf(element, scope);
  if (!data) return [];
  const outline = services.outlines.recall('path', data.value, toMm, tracePath);
  return locateOutline(outline, 'The path is drawn up to here.', data, services.problems);
}

/** @param consequence a sentence on what an error leaves */
function locateOutline(
  { traces, error }: TracedOutline,
  consequence: string,
  source: OutlineSource,
  problems: Problems,
): readonly Subpath[] {
  if (error) {
    const span = { from: source.textOffset(error.span.from), to: source.textOffset(error.span.to) };
    problems.add('unreadable-path', 'error', { message: error.message, detail: consequence }, span);
  }
  return locate(traces, source);
}
