/** Markers on the vertices of lines: what each draws, and where. */
import { checkpoint } from '../../base/checkpoint';
import type { Matrix } from '../../geometry/base/curve-types';
import { IDENTITY, multiply, rotation, scaling, translation } from '../../geometry/base/matrix';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { DEGREES_PER_UNIT } from '../../text/css-units';
import { addClips } from '../clip/clips';
import { containsElement, type DocumentIndex, resolveTarget } from '../document-index';
import * as messages from '../messages';
import { type OutlineServices, outlineElement } from '../outline/element-outline';
import type { ContextPaint } from '../resolve-paint';
import type { Scope } from '../scope';
import type { UrlReference } from '../style/properties';
import type { Styles } from '../style/styles';
import { GeometryValues } from '../viewport/geometry-values';
import { viewportClip } from '../viewport/nested-viewport';
import { parseSvgLength, toUserUnits } from '../viewport/units';
import { DEFAULT_ASPECT_RATIO, parseAspectRatio, parseViewBoxAttribute, viewportTransform } from '../viewport/viewport';
import { markerVertices, type Vertex } from './marker-vertices';

export interface MarkerServices extends OutlineServices {
  readonly index: DocumentIndex;
  readonly styles: Styles;
}

/** A marker to be drawn: the children of `marker`, in `scope`. */
export interface PlacedMarker {
  readonly marker: ElementNode;
  readonly scope: Scope;
}

/**
 * The markers of a graphics element in painting order; in SVG 2 all of them have vertices.
 * @param scope the scope inside the element.
 */
export function placeMarkers(
  element: ElementNode,
  scope: Scope,
  paint: ContextPaint,
  services: MarkerServices,
): readonly PlacedMarker[] {
  const { inherited } = scope.style;
  const [start, middle, end] = [inherited['marker-start'], inherited['marker-mid'], inherited['marker-end']];
  if (!start && !middle && !end) return [];
  const lengths = { declared: services.styles.declaredFor(element), style: scope.style, viewport: scope.viewBox };
  const vertices = markerVertices(outlineElement(element, lengths, IDENTITY, services));
  const within: Scope = { ...scope, contextPaint: paint, instances: [...scope.instances, element] };
  const placed = vertices.map((vertex, index) => {
    const kind = index === 0 ? 'marker-start' : index === vertices.length - 1 ? 'marker-end' : 'marker-mid';
    return placeMarker(element, inherited[kind], kind, vertex, within, services);
  });
  return placed.filter((marker) => marker !== undefined);
}

function placeMarker(
  element: ElementNode,
  reference: UrlReference,
  kind: string,
  vertex: Vertex,
  scope: Scope,
  services: MarkerServices,
): PlacedMarker | undefined {
  checkpoint(400);
  if (!reference) return undefined;
  const { index, styles, problems } = services;
  const target = resolveTarget(reference.target, index);
  if (target.kind !== 'element' || target.element.localName !== 'marker') {
    const message =
      target.kind === 'external'
        ? messages.externalReference(reference.target)
        : messages.missingReference(reference.target);
    problems.add('unsupported', 'warning', message, styles.sourceOf(element, kind));
    return undefined;
  }
  const marker = target.element;
  if (scope.instances.some((inner) => containsElement(marker, inner))) {
    problems.add('unsupported', 'warning', messages.circularMarker(reference.target), styles.sourceOf(element, kind));
    return undefined;
  }
  const inner = enterMarker(marker, vertex, kind === 'marker-start', scope, services);
  return inner && { marker, scope: inner };
}

/** The scope of a marker's content; undefined where it has no size, so that nothing of it is drawn. */
function enterMarker(
  marker: ElementNode,
  vertex: Vertex,
  starts: boolean,
  scope: Scope,
  { styles, problems }: MarkerServices,
): Scope | undefined {
  const style = styles.computeInPlace(marker);
  const lengths = { declared: styles.declaredFor(marker), style, viewport: scope.viewBox };
  const values = new GeometryValues(marker, lengths, problems);
  const width = values.size('markerWidth', 'x') ?? 3;
  const height = values.size('markerHeight', 'y') ?? 3;
  const boxText = attributeOf(marker, 'viewBox')?.value;
  const box = (boxText === undefined ? undefined : parseViewBoxAttribute(boxText)) ?? { x: 0, y: 0, width, height };
  if (!(width > 0) || !(height > 0) || !(box.width > 0) || !(box.height > 0)) return undefined;
  const ratioText = attributeOf(marker, 'preserveAspectRatio')?.value;
  const ratio = (ratioText === undefined ? undefined : parseAspectRatio(ratioText)) ?? DEFAULT_ASPECT_RATIO;
  const fit = viewportTransform(box, { width, height }, ratio);
  const refX = referenceOffset(values, marker, 'refX', box.x, box.width);
  const refY = referenceOffset(values, marker, 'refY', box.y, box.height);
  const toReference = translation(-(fit.a * refX + fit.e), -(fit.d * refY + fit.f));
  const viewport = multiply(vertexMap(marker, vertex, starts, scope), toReference);
  const toMm = multiply(scope.toMm, multiply(viewport, fit));
  const clips =
    style.own.overflow === 'visible'
      ? scope.clips
      : addClips(scope.clips, [viewportClip(multiply(scope.toMm, viewport), { width, height })], marker, problems);
  return { ...scope, toMm, style, viewBox: box, clips };
}

/** From the marker's units at its reference point to the user units of the marked element. */
function vertexMap(marker: ElementNode, vertex: Vertex, starts: boolean, scope: Scope): Matrix {
  const { inherited } = scope.style;
  const orient = attributeOf(marker, 'orient')?.value.trim().toLowerCase() ?? '0';
  let angle = vertex.direction;
  if (orient === 'auto-start-reverse') angle += starts ? Math.PI : 0;
  else if (orient !== 'auto') angle = parseAngle(orient);
  const byStroke = attributeOf(marker, 'markerUnits')?.value.trim() !== 'userSpaceOnUse';
  const width = toUserUnits(inherited['stroke-width'], 'diagonal', scope.viewBox, inherited['font-size']);
  const turned = multiply(translation(vertex.at.x, vertex.at.y), rotation(angle));
  return byStroke ? multiply(turned, scaling(width)) : turned;
}

const DEGREES: Readonly<Record<string, number>> = { '': 1, ...DEGREES_PER_UNIT };

/** Radians; 0 where the text is no angle. */
function parseAngle(text: string): number {
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(deg|grad|rad|turn)?$/.exec(text);
  return match ? (Number(match[1]) * (DEGREES[match[2] ?? ''] ?? 1) * Math.PI) / 180 : 0;
}

const PLACES: Readonly<Record<string, number>> = { left: 0, top: 0, center: 0.5, right: 1, bottom: 1 };

/** In the marker's content units. */
function referenceOffset(
  values: GeometryValues,
  marker: ElementNode,
  name: 'refX' | 'refY',
  start: number,
  size: number,
): number {
  const text = attributeOf(marker, name)?.value.trim() ?? '0';
  if (Object.hasOwn(PLACES, text)) return start + (PLACES[text] ?? 0) * size;
  const length = parseSvgLength(text);
  if (length?.unit === '%') return start + (length.value / 100) * size;
  return values.length(name, name === 'refX' ? 'x' : 'y') ?? 0;
}
