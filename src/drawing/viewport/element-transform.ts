/** The `transform` of an element with its origin. */

import type { Matrix } from '../../geometry/base/curve-types';
import { multiply, translation } from '../../geometry/base/matrix';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { FILL_BOX } from '../messages';
import type { Problems } from '../problems';
import type { Scope } from '../scope';
import type { ComputedStyle } from '../style/computed-style';
import type { Styles } from '../style/styles';
import { parseTransformList, type ReferenceBox, transformMatrix } from './transform-list';
import { toUserUnits } from './units';

/** The geometry box of the element in its own user units, for `transform-box: fill-box`. */
export type BoxOf = (element: ElementNode, scope: Scope, style: ComputedStyle) => ReferenceBox | undefined;

const NO_BOX: ReferenceBox = { x: 0, y: 0, width: 0, height: 0 };

/** From the element's user units to those it stands in; undefined where there is no transform. */
export function elementTransform(
  element: ElementNode,
  scope: Scope,
  style: ComputedStyle,
  styles: Styles,
  problems: Problems,
  boxOf?: BoxOf,
): Matrix | undefined {
  const { own, inherited, transform } = style;
  if (transform.length === 0) {
    reportUnreadable(element, styles, problems);
    return undefined;
  }
  const fillBox = own['transform-box'] === 'fill-box';
  if (fillBox && !boxOf) reportFillBox(element, styles, problems);
  const box = fillBox ? (boxOf?.(element, scope, style) ?? NO_BOX) : scope.viewBox;
  const matrix = transformMatrix(transform, box);
  const [originX, originY] = own['transform-origin'];
  // Lengths count from the corner of a fill box, but from the origin of user space for the view box.
  const corner = fillBox ? box : { x: 0, y: 0 };
  const offset = (origin: typeof originX, axis: 'x' | 'y'): number =>
    toUserUnits(origin, axis, box, inherited['font-size']) + (origin.unit === '%' ? box[axis] : corner[axis]);
  const [x, y] = [offset(originX, 'x'), offset(originY, 'y')];
  return x === 0 && y === 0 ? matrix : multiply(multiply(translation(x, y), matrix), translation(-x, -y));
}

function reportFillBox(element: ElementNode, styles: Styles, problems: Problems): void {
  problems.add('unsupported', 'warning', FILL_BOX, styles.sourceOf(element, 'transform-box'));
}

function reportUnreadable(element: ElementNode, styles: Styles, problems: Problems): void {
  const attribute = attributeOf(element, 'transform');
  if (!attribute || styles.cascade.transformOf(element) !== undefined) return;
  const { error } = parseTransformList(attribute.value);
  if (!error) return;
  const span = { from: attribute.textOffset(error.span.from), to: attribute.textOffset(error.span.to) };
  const wording = { message: error.message, detail: 'The whole transform is left out.' };
  problems.add('unreadable-markup', 'warning', wording, span);
}
