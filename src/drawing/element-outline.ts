/** The outline of a graphics element, in sheet millimetres. */
import type { Matrix } from '../geometry/curve';
import { parsePoints } from '../markup/number-lists';
import { parsePathData } from '../markup/path-data';
import type { PathData } from '../markup/path-commands';
import type { Attribute, ElementNode } from '../markup/tree';
import type { Span } from '../text';
import { traceEllipse, tracePoints, traceRectangle } from './basic-shapes';
import { attributeOf } from './document-index';
import type { Subpath } from './drawing';
import { GeometryValues, type LengthScope } from './geometry-values';
import { OutlineBuilder } from './outline-builder';
import { tracePath } from './path-outline';
import type { Problems } from './problems';

const GRAPHICS = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon']);

/** Whether elements of this name have an outline. */
export function isGraphicsElement(localName: string): boolean {
  return GRAPHICS.has(localName);
}

/** The element's outline, every curve mapped by `toMm` and knowing its text. Empty where nothing is drawn. */
export function outlineElement(
  element: ElementNode, scope: LengthScope, toMm: Matrix, problems: Problems,
): readonly Subpath[] {
  const builder = new OutlineBuilder(toMm);
  const values = new GeometryValues(element, scope, problems);
  const span = element.startTag;
  switch (element.localName) {
    case 'path': outlinePath(element, scope, builder, problems); break;
    case 'rect': outlineRectangle(values, span, builder); break;
    case 'circle': {
      const radius = values.size('r', 'diagonal') ?? 0;
      traceEllipse(values.length('cx', 'x') ?? 0, values.length('cy', 'y') ?? 0, radius, radius, span, builder);
      break;
    }
    case 'ellipse': {
      const radiusX = values.size('rx', 'x');
      const radiusY = values.size('ry', 'y');
      const [centreX, centreY] = [values.length('cx', 'x') ?? 0, values.length('cy', 'y') ?? 0];
      traceEllipse(centreX, centreY, radiusX ?? radiusY ?? 0, radiusY ?? radiusX ?? 0, span, builder);
      break;
    }
    case 'line': {
      const at = (name: string, axis: 'x' | 'y'): number => values.length(name, axis) ?? 0;
      builder.moveTo(at('x1', 'x'), at('y1', 'y'));
      builder.lineTo(at('x2', 'x'), at('y2', 'y'), span);
      break;
    }
    case 'polyline': outlinePoints(element, false, builder, problems); break;
    case 'polygon': outlinePoints(element, true, builder, problems); break;
  }
  return builder.done();
}

function outlineRectangle(values: GeometryValues, span: Span, builder: OutlineBuilder): void {
  traceRectangle({
    x: values.length('x', 'x') ?? 0,
    y: values.length('y', 'y') ?? 0,
    width: values.size('width', 'x') ?? 0,
    height: values.size('height', 'y') ?? 0,
    radiusX: values.size('rx', 'x'),
    radiusY: values.size('ry', 'y'),
  }, span, builder);
}

function textSpanIn(attribute: Attribute): (span: Span) => Span {
  return ({ from, to }) => ({ from: attribute.textOffset(from), to: attribute.textOffset(to) });
}

function outlinePoints(element: ElementNode, closed: boolean, builder: OutlineBuilder, problems: Problems): void {
  const attribute = attributeOf(element, 'points');
  if (!attribute) return;
  const textSpan = textSpanIn(attribute);
  const { values, spans, error } = parsePoints(attribute.value);
  if (error) {
    const message = `${error.message} The points up to here are drawn.`;
    problems.add('unreadable-path', 'error', message, textSpan(error.span));
  }
  const pairs: Span[] = [];
  for (let index = 0; index + 1 < spans.length; index += 2) {
    pairs.push(textSpan({ from: spans[index]?.from ?? 0, to: spans[index + 1]?.to ?? 0 }));
  }
  tracePoints(values, pairs, closed, builder);
}

/** Path data with the way from its spans to the document's. */
export interface LocatedPathData extends PathData {
  textSpan(span: Span): Span;
}

/** The path data of a `path`, from `d` or from the CSS property of that name. */
export function pathDataOf(element: ElementNode, scope: Pick<LengthScope, 'declared'>): LocatedPathData | undefined {
  const css = scope.declared.get('d');
  if (css) {
    const quoted = /^\s*path\(\s*(?:"([^"]*)"|'([^']*)')\s*\)\s*$/i.exec(css.value);
    const whole = css.source?.valueSpan ?? element.nameSpan;
    if (quoted) return { ...parsePathData(quoted[1] ?? quoted[2] ?? ''), textSpan: () => whole };
    if (css.value.trim() === 'none') return undefined;
  }
  const attribute = attributeOf(element, 'd');
  if (!attribute || attribute.value.trim() === 'none') return undefined;
  return { ...parsePathData(attribute.value), textSpan: textSpanIn(attribute) };
}

function outlinePath(
  element: ElementNode, scope: LengthScope, builder: OutlineBuilder, problems: Problems,
): void {
  const data = pathDataOf(element, scope);
  if (!data) return;
  const { commands, error } = data;
  if (error) {
    const message = `${error.message} The path is drawn up to here.`;
    problems.add('unreadable-path', 'error', message, data.textSpan(error.span));
  }
  tracePath(commands, (span) => data.textSpan(span), builder);
}
