/** Geometry that attributes or CSS state: `x`, `width`, `r`, … in user units. */

import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { negativeSize, noLength, windowLength } from '../messages';
import type { Problems } from '../problems';
import { type DeclaredStyle, sourceAttribute } from '../style/cascade';
import type { ComputedStyle } from '../style/computed-style';
import { type Axis, isWindowLength, parseSvgLength, toUserUnits, type ViewportSize } from './units';

/** What lengths on an element depend on. */
export interface LengthScope {
  readonly declared: DeclaredStyle;
  readonly style: ComputedStyle;
  /** What percentages are of, in user units. */
  readonly viewport: ViewportSize;
}

/** Reads lengths of one element. */
export class GeometryValues {
  private readonly element: ElementNode;
  private readonly scope: LengthScope;
  private readonly problems: Problems;

  constructor(element: ElementNode, scope: LengthScope, problems: Problems) {
    this.element = element;
    this.scope = scope;
    this.problems = problems;
  }

  /** User units; undefined where it is absent, `auto`, or cannot be read (which is reported). */
  length(name: string, axis: Axis): number | undefined {
    const css = this.scope.declared.get(name);
    const attribute = css ? sourceAttribute(this.element, name, css) : attributeOf(this.element, name);
    const text = css?.value ?? attribute?.value;
    if (text === undefined || text.trim() === 'auto') return undefined;
    const length = parseSvgLength(text);
    const { viewport, style } = this.scope;
    const { 'font-size': fontSize, rootFontSize } = style.inherited;
    if (length) return toUserUnits(length, axis, viewport, fontSize, rootFontSize);
    const wording = (isWindowLength(text) ? windowLength : noLength)(text, name, this.element.localName);
    this.problems.add('unreadable-markup', 'warning', wording, attribute?.valueSpan ?? this.element.nameSpan);
    return undefined;
  }

  /** As `length`, but a negative value is no value (SVG 2 makes it invalid, and it is reported). */
  size(name: string, axis: Axis): number | undefined {
    const value = this.length(name, axis);
    if (value === undefined || value >= 0) return value;
    const css = this.scope.declared.get(name);
    const attribute = (css && sourceAttribute(this.element, name, css)) ?? attributeOf(this.element, name);
    const wording = negativeSize(name, this.element.localName);
    this.problems.add('unreadable-markup', 'warning', wording, attribute?.valueSpan ?? this.element.nameSpan);
    return undefined;
  }
}
