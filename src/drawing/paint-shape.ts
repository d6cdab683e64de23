/** Fills and strokes of one graphics element. */

import { attributeOf } from '../markup/query';
import type { ElementNode } from '../markup/tree';
import type { Budget } from './budget';
import { ClipPaths } from './clip/clip-paths';
import { addClips } from './clip/clips';
import type { DocumentIndex } from './document-index';
import { type PlacedMarker, placeMarkers } from './marker/markers';
import * as messages from './messages';
import { type OutlineServices, outlineElement } from './outline/element-outline';
import { reachesTooFar } from './reach';
import { PaintResolver, type ResolvedPaint } from './resolve-paint';
import type { Scope } from './scope';
import { strokeArea } from './stroke/stroke-outline';
import type { ComputedStyle } from './style/computed-style';
import type { Styles } from './style/styles';
import type { Shape, Subpath } from './types';
import { parseSvgLength } from './viewport/units';

export interface PainterServices extends OutlineServices {
  readonly index: DocumentIndex;
  readonly styles: Styles;
  readonly budget: Budget;
  /** Millimetres in one px of the root's viewport. */
  readonly mmPerPx: number;
}

export class ShapePainter {
  readonly shapes: Shape[] = [];
  private readonly services: PainterServices;
  private readonly clipPaths: ClipPaths;
  private readonly paints: PaintResolver;

  constructor(services: PainterServices) {
    this.services = services;
    this.clipPaths = new ClipPaths(services);
    this.paints = new PaintResolver(services.index, services.styles);
  }

  /**
   * Paints the element itself and gives the markers that are to be drawn after it.
   * @param scope the scope inside the element: its own style, transform, opacity and clips.
   */
  paint(element: ElementNode, scope: Scope): readonly PlacedMarker[] {
    if (scope.style.inherited.visibility === 'hidden') return [];
    const { style, contextPaint } = scope;
    this.paintShape(element, scope);
    if (!hasMarkers(style)) return [];
    const fill = this.paints.resolve(style.inherited.fill, style, contextPaint);
    const stroke = this.paints.resolve(style.inherited.stroke, style, contextPaint);
    return placeMarkers(element, scope, { fill, stroke }, this.services);
  }

  private paintShape(element: ElementNode, scope: Scope): void {
    const { inherited } = scope.style;
    const fill = element.localName === 'line' ? undefined : this.paintOf(element, scope, 'fill');
    const stroke = this.paintOf(element, scope, 'stroke');
    if (!fill && !stroke) return;
    const lengths = {
      declared: this.services.styles.declaredFor(element),
      style: scope.style,
      viewport: scope.viewBox,
    };
    const outline = outlineElement(element, lengths, scope.toMm, this.services);
    if (outline.length === 0) return;
    if (reachesTooFar(outline)) {
      this.services.problems.add('unsupported', 'warning', messages.TOO_FAR, element.startTag);
      return;
    }
    if (scope.instances.length > 0) this.services.budget.spendCurves(countCurves(outline));
    const filled = fill && this.fillShape(element, scope, outline, fill);
    const stroked = stroke && this.strokeShape(element, scope, outline, stroke);
    const strokeFirst = inherited['paint-order'] === 'stroke-first';
    if (stroked && strokeFirst) this.shapes.push(stroked);
    if (filled) this.shapes.push(filled);
    if (stroked && !strokeFirst) this.shapes.push(stroked);
  }

  /** The scope with the element's clip-path in force; undefined where it leaves nothing. */
  clipped(element: ElementNode, scope: Scope): Scope | undefined {
    const reference = scope.style.own['clip-path'];
    if (reference === null) return scope;
    const { styles, problems } = this.services;
    if (reference === 'shape') {
      problems.add('not-cuttable', 'warning', messages.CLIP_SHAPE, styles.sourceOf(element, 'clip-path'));
      return scope;
    }
    const clips = this.clipPaths.clipsFor(element, reference, scope);
    return clips === 'nothing' ? undefined : { ...scope, clips: addClips(scope.clips, clips, element, problems) };
  }

  private fillShape(
    element: ElementNode,
    scope: Scope,
    subpaths: readonly Subpath[],
    { paint, alpha }: ResolvedPaint,
  ): Shape {
    const { instances, topLevel = element, toMm, clips } = scope;
    return {
      part: 'fill',
      element,
      instances,
      topLevel,
      toMm,
      subpaths,
      fillRule: scope.style.inherited['fill-rule'],
      clips,
      paint,
      opacity: alpha * scope.opacity,
    };
  }

  private strokeShape(
    element: ElementNode,
    scope: Scope,
    centreline: readonly Subpath[],
    { paint, alpha }: ResolvedPaint,
  ): Shape | undefined {
    const { budget, mmPerPx, problems, styles } = this.services;
    const { style, viewBox: viewport, toMm } = scope;
    const text = attributeOf(element, 'pathLength')?.value;
    const pathLength = text === undefined ? undefined : parseSvgLength(text)?.value;
    const area = strokeArea(centreline, { style, viewport, toMm, mmPerPx, pathLength, budget });
    if (!area) return undefined;
    if (area.dashesLeftOut) {
      const span = styles.sourceOf(element, 'stroke-dasharray');
      problems.add('unsupported', 'warning', messages.DASHES, span);
    }
    if (area.subpaths.length === 0) return undefined;
    const join = style.inherited['stroke-linejoin'];
    if (join === 'miter-clip' || join === 'arcs') {
      problems.add('unsupported', 'info', messages.unusualJoin(join), styles.sourceOf(element, 'stroke-linejoin'));
    }
    const { instances, topLevel = element, clips } = scope;
    return {
      part: 'stroke',
      element,
      instances,
      topLevel,
      toMm,
      subpaths: area.subpaths,
      fillRule: 'nonzero',
      clips,
      paint,
      opacity: alpha * scope.opacity,
      centreline,
      strokeWidth: area.width,
      strokeCap: style.inherited['stroke-linecap'],
      ...(join !== 'round' && join !== 'bevel' && { miterLimit: style.inherited['stroke-miterlimit'] }),
      dashed: area.dashes !== undefined || area.dashesLeftOut,
      ...(area.dashes && { dashes: area.dashes }),
    };
  }

  /** What paints the part, with the part's own opacity in its alpha; undefined where nothing shows. */
  private paintOf(element: ElementNode, scope: Scope, part: 'fill' | 'stroke'): ResolvedPaint | undefined {
    const { inherited } = scope.style;
    const value = inherited[part];
    if (value.kind === 'none') return undefined;
    const resolved = this.paints.resolve(value, scope.style, scope.contextPaint);
    const alpha = resolved.alpha * inherited[part === 'fill' ? 'fill-opacity' : 'stroke-opacity'];
    const painted = alpha === resolved.alpha ? resolved : { ...resolved, alpha };
    this.reportPaint(element, part, painted);
    return painted.paint.kind === 'none' || alpha === 0 ? undefined : painted;
  }

  private reportPaint(element: ElementNode, part: 'fill' | 'stroke', resolved: ResolvedPaint): void {
    const { styles, problems } = this.services;
    const { server, broken, alpha, paint } = resolved;
    if (broken) {
      const message = BROKEN[broken.why](broken.reference);
      problems.add('unsupported', 'warning', message, styles.sourceOf(element, part));
    }
    if (paint.kind === 'none' || alpha === 0) return;
    if (server) {
      const message = server.localName === 'pattern' ? messages.PATTERN : messages.GRADIENT;
      problems.add('not-cuttable', 'warning', message, styles.sourceOf(element, part));
    } else if (alpha < 1) {
      const own = `${part}-opacity`;
      const stated = resolved.alpha < 1 && styles.declaredFor(element).has(own) ? own : part;
      problems.add('not-cuttable', 'warning', messages.partialOpacity(alpha), styles.sourceOf(element, stated));
    }
  }
}

const BROKEN = {
  missing: messages.missingReference,
  external: messages.externalReference,
  'no-server': messages.noPaintServer,
} as const;

function hasMarkers({ inherited }: ComputedStyle): boolean {
  return Boolean(inherited['marker-start'] ?? inherited['marker-mid'] ?? inherited['marker-end']);
}

function countCurves(subpaths: readonly Subpath[]): number {
  return subpaths.reduce((sum, { curves }) => sum + curves.length, 0);
}
