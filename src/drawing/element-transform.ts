/** The `transform` of an element with its origin. */
import type { Matrix } from '../geometry/curve';
import { multiply, translation } from '../geometry/matrix';
import type { ElementNode } from '../markup/tree';
import { attributeOf } from './document-index';
import type { Problems } from './problems';
import type { Scope } from './scope';
import type { ComputedStyle } from './style/computed-style';
import type { Styles } from './style/styles';
import { parseTransformList, transformMatrix } from './transform-list';
import { toUserUnits } from './units';

/** From the element's user units to those it stands in; undefined where there is no transform. */
export function elementTransform(
  element: ElementNode, scope: Scope, style: ComputedStyle, styles: Styles, problems: Problems,
): Matrix | undefined {
  reportUnreadable(element, styles, problems);
  const { own, inherited } = style;
  if (own.transform.length === 0) return undefined;
  const { viewBox } = scope;
  const matrix = transformMatrix(own.transform, viewBox);
  const [originX, originY] = own['transform-origin'];
  if (originX.value === 0 && originY.value === 0) return matrix;
  // Lengths count from the user space's origin, percentages are of the view box, whose corner they count from.
  const x = toUserUnits(originX, 'x', viewBox, inherited['font-size']) + (originX.unit === '%' ? viewBox.x : 0);
  const y = toUserUnits(originY, 'y', viewBox, inherited['font-size']) + (originY.unit === '%' ? viewBox.y : 0);
  return multiply(multiply(translation(x, y), matrix), translation(-x, -y));
}

function reportUnreadable(element: ElementNode, styles: Styles, problems: Problems): void {
  const attribute = attributeOf(element, 'transform');
  if (!attribute || styles.declaredFor(element).get('transform')) return;
  const { error } = parseTransformList(attribute.value);
  if (!error) return;
  const span = { from: attribute.textOffset(error.span.from), to: attribute.textOffset(error.span.to) };
  problems.add('unreadable-markup', 'warning', `${error.message} The whole transform is left out.`, span);
}
