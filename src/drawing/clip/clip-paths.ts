/** `clip-path: url(#…)`: the areas outside which nothing of an element is painted. */

import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Line, Matrix, Point } from '../../geometry/base/curve-types';
import { determinant, IDENTITY, multiply, translation } from '../../geometry/base/matrix';
import type { FillRule, Region, Ring } from '../../geometry/base/polygon-types';
import { ringsOf } from '../../geometry/base/ring';
import { FLATTENING } from '../../geometry/base/tolerances';
import { intersection, regionFromRings, union } from '../../geometry/boolean/index';
import { flattenSubpath } from '../../geometry/curve/flatten';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import type { Span } from '../../text/text';
import type { Wording } from '../../text/wording';
import { MAX_NESTING } from '../budget';
import { hrefOf, resolveTarget } from '../document-index';
import * as messages from '../messages';
import { type BoxServices, geometryBox } from '../outline/bounding-box';
import { isGraphicsElement, outlineElement } from '../outline/element-outline';
import type { Scope } from '../scope';
import type { UrlReference } from '../style/properties';
import type { Clip, Subpath } from '../types';
import { elementTransform } from '../viewport/element-transform';
import { GeometryValues } from '../viewport/geometry-values';
import { makeClip } from './clips';

/** What a reference gives: clips that all hold, or nothing at all to be painted. */
export type ClipResult = readonly Clip[] | 'nothing';

interface Part {
  readonly subpaths: readonly Subpath[];
  readonly fillRule: FillRule;
  /** What this part alone is clipped by. */
  readonly clips: readonly Clip[];
}

/** Distance in mm that clips within clips may lose where they must be flattened to be cut with each other. */
const FLATNESS_MM = FLATTENING;

/** Works out clip paths; those that many elements share under one map are worked out once. */
export class ClipPaths {
  private readonly services: BoxServices;
  private readonly known = new Map<ElementNode, Map<string, ClipResult>>();
  private readonly open: ElementNode[] = [];

  constructor(services: BoxServices) {
    this.services = services;
  }

  /** @param scope the scope inside the element that is clipped. */
  clipsFor(element: ElementNode, reference: NonNullable<UrlReference>, scope: Scope): ClipResult {
    const { index, styles } = this.services;
    const span = styles.sourceOf(element, 'clip-path');
    const target = resolveTarget(reference.target, index);
    if (target.kind !== 'element' || target.element.localName !== 'clipPath') {
      this.report(messages.noClipPath(reference.target), span);
      return [];
    }
    if (this.open.includes(target.element)) {
      this.report(messages.CIRCULAR_CLIP, span);
      return 'nothing';
    }
    if (this.open.length >= MAX_NESTING) {
      this.report(messages.DEEP_CLIPS, span);
      return [];
    }
    if (isSizedByBox(target.element) && this.holdsText(element)) {
      this.report(messages.CLIP_BY_TEXT, span);
      return [];
    }
    const units = this.unitMap(target.element, element, scope);
    return units ? this.remembered(target.element, units, scope) : 'nothing';
  }

  private report(wording: Wording, span: Span): void {
    this.services.problems.add('unsupported', 'warning', wording, span);
  }

  /** From the clip path's units to the clipped element's. Undefined where its box has no area. */
  private unitMap(clipPath: ElementNode, element: ElementNode, scope: Scope): Matrix | undefined {
    if (!isSizedByBox(clipPath)) return IDENTITY;
    const box = geometryBox(element, scope, this.services);
    if (!box || box.maxX <= box.minX || box.maxY <= box.minY) return undefined;
    return { a: box.maxX - box.minX, b: 0, c: 0, d: box.maxY - box.minY, e: box.minX, f: box.minY };
  }

  /** Hidden text, too, is part of its group's box. */
  private holdsText(element: ElementNode): boolean {
    const left = [element];
    for (let next = left.pop(); next; next = left.pop()) {
      checkpoint();
      if (next.localName === 'text' && next.namespace === this.services.index.namespace) return true;
      for (const child of next.children) if (child.kind === 'element') left.push(child);
    }
    return false;
  }

  private remembered(clipPath: ElementNode, units: Matrix, scope: Scope): ClipResult {
    const key = [scope.toMm, units].flatMap(({ a, b, c, d, e, f }) => [a, b, c, d, e, f]).join(' ');
    let results = this.known.get(clipPath);
    if (!results) this.known.set(clipPath, (results = new Map()));
    const known = results.get(key);
    if (known) return known;
    this.open.push(clipPath);
    const result = this.compute(clipPath, units, scope);
    this.open.pop();
    results.set(key, result);
    return result;
  }

  private compute(clipPath: ElementNode, units: Matrix, outer: Scope): ClipResult {
    const { styles, problems } = this.services;
    const style = styles.computeInPlace(clipPath);
    const around = style.own['clip-path'];
    const further = around && around !== 'shape' ? this.clipsFor(clipPath, around, outer) : [];
    if (further === 'nothing') return 'nothing';
    const own = elementTransform(clipPath, outer, style, styles, problems) ?? IDENTITY;
    const viewBox = units === IDENTITY ? outer.viewBox : { x: 0, y: 0, width: 1, height: 1 };
    const scope: Scope = { ...outer, toMm: multiply(multiply(outer.toMm, own), units), viewBox, style };
    const parts = clipPath.children.flatMap((child) => (child.kind === 'element' ? this.partsOf(child, scope) : []));
    if (parts.length === 0) return 'nothing';
    return [...joinParts(parts), ...further];
  }

  /** The area of a child of a clip path; none where it is not displayed, hidden, or not a shape. */
  private partsOf(child: ElementNode, scope: Scope): readonly Part[] {
    if (child.namespace !== this.services.index.namespace) return [];
    const inner = this.enter(child, scope);
    if (!inner) return [];
    if (isGraphicsElement(child.localName)) return this.graphicsPart(child, inner.scope, inner.clips);
    if (child.localName === 'use') return this.usePart(child, inner.scope, inner.clips);
    if (child.localName === 'text') {
      this.services.problems.add('not-cuttable', 'error', messages.CLIPPING_TEXT, child.startTag);
    }
    return [];
  }

  private usePart(use: ElementNode, scope: Scope, clips: readonly Clip[]): readonly Part[] {
    const href = hrefOf(use);
    const target = href && resolveTarget(href.value, this.services.index);
    if (target?.kind !== 'element' || !isGraphicsElement(target.element.localName)) return [];
    const lengths = { declared: this.services.styles.declaredFor(use), style: scope.style, viewport: scope.viewBox };
    const values = new GeometryValues(use, lengths, this.services.problems);
    const moved = translation(values.length('x', 'x') ?? 0, values.length('y', 'y') ?? 0);
    const inner = this.enter(target.element, { ...scope, toMm: multiply(scope.toMm, moved) });
    return inner ? this.graphicsPart(target.element, inner.scope, [...clips, ...inner.clips]) : [];
  }

  /** The scope inside a child and the clips of its own; undefined where nothing of it counts. */
  private enter(element: ElementNode, outer: Scope): { scope: Scope; clips: readonly Clip[] } | undefined {
    const { styles, problems } = this.services;
    const style = styles.compute(element, outer.style);
    if (style.own.display === 'none') return undefined;
    const local = elementTransform(element, outer, style, styles, problems);
    const scope = { ...outer, style, toMm: local ? multiply(outer.toMm, local) : outer.toMm };
    const size = determinant(scope.toMm);
    if (size === 0 || !Number.isFinite(size)) return undefined;
    const reference = style.own['clip-path'];
    const clips = reference && reference !== 'shape' ? this.clipsFor(element, reference, scope) : [];
    return clips === 'nothing' ? undefined : { scope, clips };
  }

  private graphicsPart(element: ElementNode, scope: Scope, clips: readonly Clip[]): readonly Part[] {
    const { styles, budget } = this.services;
    const { inherited } = scope.style;
    if (inherited.visibility === 'hidden') return [];
    const lengths = { declared: styles.declaredFor(element), style: scope.style, viewport: scope.viewBox };
    const subpaths = outlineElement(element, lengths, scope.toMm, this.services);
    const count = subpaths.reduce((sum, { curves }) => sum + curves.length, 0);
    if (count === 0) return [];
    if (!budget.spendCurves(count)) {
      this.report(messages.CLIP_BLOW_UP, element.startTag);
      return [];
    }
    return [{ subpaths, fillRule: inherited['clip-rule'], clips }];
  }
}

function isSizedByBox(clipPath: ElementNode): boolean {
  return attributeOf(clipPath, 'clipPathUnits')?.value.trim() === 'objectBoundingBox';
}

/** Clips that together mean the union of the parts, each cut by its own clips. */
function joinParts(parts: readonly Part[]): readonly Clip[] {
  const [only] = parts;
  if (only && parts.length === 1) return [makeClip([plain(only)]), ...only.clips];
  return [makeClip(parts.map((part) => (part.clips.length === 0 ? plain(part) : cutPart(part))))];
}

function plain({ subpaths, fillRule }: Part): Clip['parts'][number] {
  return { subpaths, fillRule };
}

/** The part with its own clips worked in, which straightens its curves. */
function cutPart({ subpaths, fillRule, clips }: Part): Clip['parts'][number] {
  const span = subpaths[0]?.spans[0] ?? { from: 0, to: 0 };
  let region = regionOf(subpaths, fillRule);
  for (const clip of clips) {
    region = intersection(region, union(clip.parts.map((part) => regionOf(part.subpaths, part.fillRule))));
  }
  const rings = region.flatMap(ringsOf);
  return { subpaths: rings.map((ring) => subpathOfRing(ring, span)), fillRule: 'nonzero' };
}

function regionOf(subpaths: readonly Subpath[], fillRule: FillRule): Region {
  return regionFromRings(
    subpaths.map(({ curves }) => flattenSubpath(curves, FLATNESS_MM)),
    fillRule,
  );
}

function subpathOfRing(ring: Ring, span: Span): Subpath {
  const pointAt = (at: number): Point => ({ x: defined(ring[2 * at]), y: defined(ring[2 * at + 1]) });
  const points = Array.from({ length: ring.length / 2 }, (_, at) => pointAt(at));
  const next = (at: number): Point => defined(points[(at + 1) % points.length]);
  const curves = points.map((start, at): Line => ({ kind: 'line', start, end: next(at) }));
  return { curves, spans: curves.map(() => span), closed: true };
}
