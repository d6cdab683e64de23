/** What an element is drawn within: everything that comes down to it from above. */
import type { Matrix } from '../geometry/base/curve-types';
import type { ElementNode } from '../markup/tree';
import type { ContextPaint } from './resolve-paint';
import type { ComputedStyle } from './style/computed-style';
import type { Clip } from './types';
import type { ViewBox } from './viewport/viewport';

export interface Scope {
  /** From the user units that the element stands in to sheet mm. */
  readonly toMm: Matrix;
  /** The parent's style; that of the `use` for what a `use` draws. */
  readonly style: ComputedStyle;
  /** The nearest viewport in its own user units: what percentages are of. */
  readonly viewBox: ViewBox;
  readonly clips: readonly Clip[];
  /** All group opacities so far, multiplied. */
  readonly opacity: number;
  readonly instances: readonly ElementNode[];
  readonly topLevel: ElementNode | undefined;
  readonly contextPaint: ContextPaint | undefined;
  /** Sizes that a `use` states for the `svg` or `symbol` it draws. */
  readonly useSize: { readonly width: number | undefined; readonly height: number | undefined } | undefined;
}
