/** Walks the tree as a renderer does and collects the shapes it would paint. */

import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Matrix } from '../geometry/base/curve-types';
import { determinant, IDENTITY, multiply } from '../geometry/base/matrix';
import { ancestors, XHTML_NAMESPACE } from '../markup/query';
import type { ElementNode, MarkupNode } from '../markup/tree';
import type { Wording } from '../text/wording';
import { MAX_NESTING } from './budget';
import { conditionsHold, unmetCondition } from './conditions';
import { ANIMATIONS, containsElement, type DocumentIndex, hrefOf, resolveTarget } from './document-index';
import type { PlacedMarker } from './marker/markers';
import * as messages from './messages';
import { reportCondition, reportStyle } from './not-followed';
import { geometryBox } from './outline/bounding-box';
import { isGraphicsElement } from './outline/element-outline';
import { type PainterServices, ShapePainter } from './paint-shape';
import type { Problems } from './problems';
import type { Scope } from './scope';
import { type ComputedStyle, INITIAL_STYLE } from './style/computed-style';
import type { Styles } from './style/styles';
import type { Shape } from './types';
import { type BoxOf, elementTransform } from './viewport/element-transform';
import { GeometryValues } from './viewport/geometry-values';
import { enterViewport } from './viewport/nested-viewport';
import type { RootSize } from './viewport/root-size';

const NEVER_DRAWN: ReadonlySet<string> = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'marker',
  'pattern',
  'linearGradient',
  'radialGradient',
  'filter',
  'stop',
  'metadata',
  'title',
  'desc',
  'style',
  'script',
  'view',
  'cursor',
  'font',
  'font-face',
  'color-profile',
  'hatch',
  'meshgradient',
  'solidcolor',
  'mpath',
  'hatchpath',
  'glyph',
  'missing-glyph',
  'hkern',
  'vkern',
]);

/** Parts of others: alone they draw nothing. */
const MISPLACED: ReadonlySet<string> = new Set(['tspan', 'textPath', 'tref', 'altGlyph']);

/** SVG 2, "Embedded Content". */
const EMBEDDED: ReadonlySet<string> = new Set(['video', 'audio', 'iframe', 'canvas']);

/** Reading the style of an element and placing it takes some microseconds. */
const STEPS_PER_NODE = 16;

function isHidden({ own, inherited }: ComputedStyle, { style }: Scope): boolean {
  const isInvisible = inherited.visibility !== 'visible' && style.inherited.visibility === 'visible';
  return own.display === 'none' || isInvisible;
}

/** Whether an element is a group with something in it, at the top or within a group at the top. */
function isNearTop({ localName, parent, children }: ElementNode, root: ElementNode): boolean {
  const within = parent?.localName === 'g' ? parent.parent : parent;
  return localName === 'g' && within === root && children.some(({ kind }) => kind === 'element');
}

/** Nodes that are drawn one after the other in the same scope. */
interface Row {
  readonly nodes: readonly MarkupNode[];
  readonly scope: Scope;
  next: number;
}

export class Painter {
  private readonly index: DocumentIndex;
  private readonly styles: Styles;
  private readonly size: RootSize;
  private readonly problems: Problems;
  private readonly services: PainterServices;
  private readonly shapePainter: ShapePainter;
  /** What is still to be drawn, the next of it last: a stack of our own, as trees may be 100,000 deep. */
  private readonly rows: Row[] = [];
  private readonly hiddenGroups: ElementNode[] = [];

  constructor(services: PainterServices, size: RootSize) {
    this.index = services.index;
    this.styles = services.styles;
    this.size = size;
    this.problems = services.problems;
    this.services = services;
    this.shapePainter = new ShapePainter(services);
  }

  /** Groups that may be meant as layers, and of which nothing is shown. */
  get hidden(): readonly ElementNode[] {
    const shown = new Set<ElementNode>();
    for (const { element, instances } of this.hiddenGroups.length > 0 ? this.shapes : []) {
      for (const around of ancestors(instances[0] ?? element)) shown.add(around);
    }
    return this.hiddenGroups.filter((group) => !shown.has(group));
  }

  get shapes(): readonly Shape[] {
    return this.shapePainter.shapes;
  }

  paint(root: ElementNode): void {
    const scope: Scope = {
      toMm: this.size.toMm ?? IDENTITY,
      style: INITIAL_STYLE,
      viewBox: this.size.viewBox,
      clips: [],
      opacity: 1,
      instances: [],
      topLevel: undefined,
      contextPaint: undefined,
      useSize: undefined,
    };
    this.push([root], scope);
    for (let row = this.rows.at(-1); row; row = this.rows.at(-1)) {
      checkpoint(STEPS_PER_NODE);
      const node = row.nodes[row.next];
      row.next += 1;
      // Before what is within its last node: so groups within groups, each alone in its own, make no stack.
      if (row.next >= row.nodes.length) this.rows.pop();
      if (node?.kind === 'element') this.visit(node, row.scope, root);
    }
    if (this.styles.cascade.exhausted) {
      this.problems.add(
        'unsupported',
        'warning',
        messages.SLOW_SELECTORS,
        this.index.styleElements[0]?.startTag ?? root.nameSpan,
      );
    }
  }

  private visit(element: ElementNode, scope: Scope, root: ElementNode): void {
    if (element.namespace !== this.index.namespace) return this.reportForeign(element);
    const unmet = unmetCondition(element);
    if (unmet) return reportCondition(unmet, this.problems);
    const name = element.localName;
    if ((NEVER_DRAWN.has(name) && !(name === 'symbol' && scope.useSize)) || ANIMATIONS.has(name)) return;
    if (scope.instances.length > 0 && !this.services.budget.spendElement()) return this.reportBlowUp(scope);
    const style = this.styles.compute(element, scope.style);
    if (isHidden(style, scope) && isNearTop(element, root)) this.hiddenGroups.push(element);
    if (style.own.display === 'none') return;
    const inner = this.enter(element, scope, style, root);
    if (!inner) return;
    if (isGraphicsElement(name)) this.pushMarkers(this.shapePainter.paint(element, inner));
    else this.visitContainer(element, name, inner, root);
  }

  private visitContainer(element: ElementNode, name: string, scope: Scope, root: ElementNode): void {
    switch (name) {
      case 'svg':
      case 'symbol': {
        const inner = element === root ? scope : enterViewport(element, scope, this.styles, this.problems);
        if (inner) this.pushChildren(element, inner);
        return;
      }
      case 'g':
      case 'a':
        return this.pushChildren(element, scope);
      case 'switch':
        return this.pushChosen(element, scope);
      case 'use':
        return this.visitUse(element, scope);
      default:
        return this.reportElement(element, name, scope);
    }
  }

  /** The scope inside an element: its transform, opacity and clips applied. Undefined where nothing of it shows. */
  private enter(element: ElementNode, scope: Scope, style: ComputedStyle, root: ElementNode): Scope | undefined {
    const { own } = style;
    const toMm = this.transformed(element, scope, style);
    const opacity = scope.opacity * own.opacity;
    if (!toMm || opacity === 0) return undefined;
    if (own.opacity < 1) {
      const span = this.styles.sourceOf(element, 'opacity');
      this.problems.add('not-cuttable', 'warning', messages.partialOpacity(own.opacity), span);
    }
    const topLevel = scope.topLevel ?? (element.parent === root ? element : undefined);
    const { clips, viewBox, instances, contextPaint } = scope;
    const inner: Scope = {
      toMm,
      style,
      viewBox,
      opacity,
      topLevel,
      clips,
      instances,
      contextPaint,
      useSize: scope.useSize,
    };
    reportStyle(element, style, this.styles, this.problems);
    return this.shapePainter.clipped(element, inner);
  }

  private transformed(element: ElementNode, scope: Scope, style: ComputedStyle): Matrix | undefined {
    const local = elementTransform(element, scope, style, this.styles, this.problems, this.boxOf);
    if (!local) return scope.toMm;
    const toMm = multiply(scope.toMm, local);
    const area = determinant(toMm);
    return area !== 0 && Number.isFinite(area + toMm.e + toMm.f) ? toMm : undefined;
  }

  private readonly boxOf: BoxOf = (element, scope, style) => {
    const box = geometryBox(element, { ...scope, style }, this.services);
    return box && { x: box.minX, y: box.minY, width: box.maxX - box.minX, height: box.maxY - box.minY };
  };

  private pushChildren(element: ElementNode, scope: Scope): void {
    if (element.children.length === 0) return;
    this.push(element.children, scope.useSize ? { ...scope, useSize: undefined } : scope);
  }

  private push(nodes: readonly MarkupNode[], scope: Scope): void {
    this.rows.push({ nodes, scope, next: 0 });
  }

  private pushMarkers(markers: readonly PlacedMarker[]): void {
    for (let index = markers.length - 1; index >= 0; index -= 1) {
      const { marker, scope } = defined(markers[index]);
      this.pushChildren(marker, scope);
    }
  }

  private pushChosen(element: ElementNode, scope: Scope): void {
    const chosen = element.children.find(
      (child): child is ElementNode =>
        child.kind === 'element' &&
        child.namespace === this.index.namespace &&
        conditionsHold(child) &&
        !NEVER_DRAWN.has(child.localName),
    );
    if (chosen) this.push([chosen], scope);
  }

  private visitUse(use: ElementNode, scope: Scope): void {
    const target = this.useTarget(use, scope);
    if (!target) return;
    const values = new GeometryValues(use, this.lengthScope(use, scope), this.problems);
    const [x, y] = [values.length('x', 'x') ?? 0, values.length('y', 'y') ?? 0];
    const size = { width: values.size('width', 'x'), height: values.size('height', 'y') };
    const toMm = multiply(scope.toMm, { ...IDENTITY, e: x, f: y });
    const sized = target.localName === 'svg' || target.localName === 'symbol';
    const instances = [...scope.instances, use];
    this.push([target], { ...scope, toMm, instances, useSize: sized ? size : undefined });
  }

  private lengthScope(element: ElementNode, scope: Scope): ConstructorParameters<typeof GeometryValues>[1] {
    return { declared: this.styles.declaredFor(element), style: scope.style, viewport: scope.viewBox };
  }

  private useTarget(use: ElementNode, scope: Scope): ElementNode | undefined {
    const href = hrefOf(use);
    if (!href) return undefined;
    const report = (wording: Wording): undefined => {
      this.problems.add('unsupported', 'warning', wording, href.valueSpan);
      return undefined;
    };
    const target = resolveTarget(href.value, this.index);
    if (target.kind === 'external') return report(messages.externalReference(href.value));
    if (target.kind === 'missing') return report(messages.missingReference(href.value));
    const { element } = target;
    if ([use, ...scope.instances].some((inner) => containsElement(element, inner))) {
      return report(messages.circularUse(href.value));
    }
    if (scope.instances.length >= MAX_NESTING) {
      return report(messages.DEEP_USES);
    }
    return element;
  }

  private reportBlowUp(scope: Scope): void {
    const use = scope.instances[0];
    if (!use) return;
    this.problems.add('unsupported', 'error', messages.BLOW_UP, use.startTag);
  }

  private reportElement(element: ElementNode, name: string, scope: Scope): void {
    if (scope.style.inherited.visibility === 'hidden') return;
    const known = messages.NOT_CUTTABLE_ELEMENTS;
    const wording = Object.hasOwn(known, name) ? known[name] : undefined;
    if (wording) this.problems.add('not-cuttable', 'error', wording, element.startTag);
    else {
      const isMisplaced = /^fe[A-Z]/.test(name) || MISPLACED.has(name);
      const why = isMisplaced ? messages.misplacedElement(name) : messages.unknownElement(name);
      this.problems.add('unsupported', 'info', why, element.nameSpan);
    }
  }

  /** Elements of other vocabularies are notes of programs, but for those of HTML that SVG 2 embeds. */
  private reportForeign(element: ElementNode): void {
    if (element.namespace !== XHTML_NAMESPACE || !EMBEDDED.has(element.localName)) return;
    this.problems.add('not-cuttable', 'error', messages.EMBEDDED, element.startTag);
  }
}
