/** What an element states and the sheet does not show: each is told, none stops the reading. */
import type { Attribute, ElementNode } from '../markup/tree';
import type { Wording } from '../text/wording';
import * as messages from './messages';
import type { Problems } from './problems';
import type { ComputedStyle } from './style/computed-style';
import type { Styles } from './style/styles';
import { isWindowLength } from './viewport/units';

/** Of `vector-effect`: what no program draws yet, and `none` and `non-scaling-stroke`, which are followed. */
const FOLLOWED_EFFECTS: ReadonlySet<string> = new Set(['none', 'non-scaling-stroke', 'inherit', 'initial', 'unset']);

/** Tells of an element that is drawn what of its style is not followed. */
export function reportStyle(element: ElementNode, style: ComputedStyle, styles: Styles, problems: Problems): void {
  const { own } = style;
  const report = (check: 'unsupported' | 'not-cuttable', property: string, wording: Wording): void => {
    problems.add(check, 'warning', wording, styles.sourceOf(element, property));
  };
  for (const property of styles.unsupportedProperties(element)) {
    if (!property.startsWith('animation')) report('unsupported', property, messages.unsupportedProperty(property));
    else problems.add('unsupported', 'info', messages.ANIMATION, styles.sourceOf(element, property));
  }
  for (const { property, value, span } of styles.unreadValues(element)) {
    const wording = isWindowLength(value)
      ? messages.windowLength(value, property, element.localName)
      : messages.unreadValue(property, value);
    problems.add('unreadable-markup', 'warning', wording, span);
  }
  if (own.mask) report('not-cuttable', 'mask', messages.MASK);
  if (own.filter) report('not-cuttable', 'filter', messages.FILTER);
  if (own['mix-blend-mode'] !== 'normal') report('not-cuttable', 'mix-blend-mode', messages.BLEND_MODE);
  if (own['vector-effect'].split(/\s+/).some((word) => !FOLLOWED_EFFECTS.has(word))) {
    report('unsupported', 'vector-effect', messages.unsupportedProperty('vector-effect'));
  }
}

/** Tells by which condition an element is left out. Of a `switch` another child is drawn in its place. */
export function reportCondition({ name, value, span }: Attribute, problems: Problems): void {
  problems.add('unsupported', 'info', messages.unmetCondition(name, value), span);
}
