/** The geometry box of an element and what is in it, in its own user units (SVG 2, "Bounding boxes"). */

import { checkpoint } from '../../base/checkpoint';
import type { Matrix } from '../../geometry/base/curve-types';
import { IDENTITY, multiply, translation } from '../../geometry/base/matrix';
import type { Box } from '../../geometry/base/polygon-types';
import { joinBoxes } from '../../geometry/base/ring';
import { boundsOf } from '../../geometry/curve/index';
import type { ElementNode } from '../../markup/tree';
import type { Budget } from '../budget';
import { containsElement, type DocumentIndex, hrefOf, resolveTarget } from '../document-index';
import { DEEP_BOXES } from '../messages';
import type { Scope } from '../scope';
import type { Styles } from '../style/styles';
import { elementTransform } from '../viewport/element-transform';
import { GeometryValues } from '../viewport/geometry-values';
import { isGraphicsElement, type OutlineServices, outlineElement } from './element-outline';

export interface BoxServices extends OutlineServices {
  readonly index: DocumentIndex;
  readonly styles: Styles;
  readonly budget: Budget;
}

interface Step {
  readonly element: ElementNode;
  readonly scope: Scope;
}

/**
 * Undefined where nothing has geometry. Strokes and clips do not count; what is hidden does, what is not displayed
 * does not. Inner viewports count without being fitted to their viewBox.
 * @param scope the scope inside the element; its `toMm` is not used.
 */
export function geometryBox(element: ElementNode, scope: Scope, services: BoxServices): Box | undefined {
  const boxes: Box[] = [];
  const steps: Step[] = [];
  const local = { ...scope, toMm: IDENTITY };
  addContent(element, local, services, steps, boxes);
  for (let step = steps.pop(); step; step = steps.pop()) {
    if (!services.budget.spendBoxed()) {
      services.problems.add('unsupported', 'warning', DEEP_BOXES, element.startTag);
      break;
    }
    checkpoint(10);
    const style = services.styles.compute(step.element, step.scope.style);
    if (style.own.display === 'none') continue;
    const styled = { ...step.scope, style };
    const transform = elementTransform(step.element, step.scope, style, services.styles, services.problems);
    const toMm: Matrix = transform ? multiply(step.scope.toMm, transform) : step.scope.toMm;
    addContent(step.element, { ...styled, toMm }, services, steps, boxes);
  }
  const box = joinBoxes(boxes);
  return box.minX <= box.maxX && box.minY <= box.maxY ? box : undefined;
}

function addContent(element: ElementNode, scope: Scope, services: BoxServices, steps: Step[], boxes: Box[]): void {
  const { styles, problems, index } = services;
  if (element.namespace !== index.namespace) return;
  const lengths = { declared: styles.declaredFor(element), style: scope.style, viewport: scope.viewBox };
  if (isGraphicsElement(element.localName)) {
    const outline = outlineElement(element, lengths, scope.toMm, services);
    services.budget.spendCurves(outline.reduce((sum, { curves }) => sum + curves.length, 0));
    for (const { curves } of outline) boxes.push(joinBoxes(curves.map(boundsOf)));
  } else if (['g', 'a', 'svg', 'symbol', 'switch'].includes(element.localName)) {
    for (const child of element.children) if (child.kind === 'element') steps.push({ element: child, scope });
  } else if (element.localName === 'use') {
    const href = hrefOf(element);
    const target = href && resolveTarget(href.value, index);
    if (target?.kind !== 'element') return;
    if ([element, ...scope.instances].some((inner) => containsElement(target.element, inner))) return;
    const values = new GeometryValues(element, lengths, problems);
    const moved = translation(values.length('x', 'x') ?? 0, values.length('y', 'y') ?? 0);
    const instances = [...scope.instances, element];
    steps.push({ element: target.element, scope: { ...scope, toMm: multiply(scope.toMm, moved), instances } });
  }
}
