/** What outlines are made of. */
import type { Curve } from '../geometry/base/curve-types';
import type { Span } from '../text/text';

/** A chain of curves. `spans[i]` is the text that gave `curves[i]`. A closing line is included when it has length. */
export interface Subpath {
  readonly curves: readonly Curve[];
  readonly spans: readonly Span[];
  /** Closed by `Z` or by the kind of shape; fills treat open ones as closed. */
  readonly closed: boolean;
}
