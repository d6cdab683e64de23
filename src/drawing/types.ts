/**
 * What a renderer would paint, in sheet millimetres (y down, origin at the frame's upper left corner), curves kept as
 * curves, each knowing the text it came from.
 */
import type { Matrix } from '../geometry/base/curve-types';
import type { Box, FillRule } from '../geometry/base/polygon-types';
import type { ElementNode, MarkupDocument } from '../markup/tree';
import type { Span } from '../text/text';
import type { Wording } from '../text/wording';
import type { Subpath } from './subpath';

export type { Subpath } from './subpath';

export interface Drawing {
  readonly document: MarkupDocument;
  /** The artwork's frame in mm: the root viewport, origin 0,0. */
  readonly width: number;
  readonly height: number;
  /** Whether the text itself states a physical size. */
  readonly sizeStated: boolean;
  readonly ownSize: OwnSize;
  /** From the root's user units to sheet mm. */
  readonly toMm: Matrix;
  /** In painting order: fill before stroke of the same element. */
  readonly shapes: readonly Shape[];
  /** Groups at the top, or within a group at the top, that are not shown, in the order of the text. */
  readonly hidden: readonly ElementNode[];
  readonly problems: readonly DrawingProblem[];
}

/**
 * What the root's `width`, `height` and viewBox say without our own attributes and settings: at this size, in mm, other
 * programs open the file that take 96 px to the inch.
 */
export interface OwnSize {
  readonly width: number;
  readonly height: number;
  /** Whether a unit of the ruler says so; else programs may well take the pixels for other lengths. */
  readonly physical: boolean;
  /** Whether a style says so: then what the attributes say counts for nothing. */
  readonly byStyle: boolean;
}

/** One painted area: the fill of an element, or its stroke turned into the area it covers. */
export interface Shape {
  readonly part: 'fill' | 'stroke';
  /** The element whose geometry this is (`path`, `rect`, …). */
  readonly element: ElementNode;
  /** The `use` elements, and the lines whose markers hold it, through which it is drawn, outermost first. */
  readonly instances: readonly ElementNode[];
  /** The ancestor (or the element itself, or the outermost `use`) that is a child of the root `svg`. */
  readonly topLevel: ElementNode;
  /** From the element's own user units to sheet mm. */
  readonly toMm: Matrix;
  readonly subpaths: readonly Subpath[];
  readonly fillRule: FillRule;
  /** Only what lies inside every one of these is painted. */
  readonly clips: readonly Clip[];
  readonly paint: Paint;
  /** 0..1, all opacities on the way multiplied. */
  readonly opacity: number;
  /** For strokes: the line itself before it was given a width. */
  readonly centreline?: readonly Subpath[];
  /** For strokes: the painted width in mm where the transform keeps it even, else its geometric mean. */
  readonly strokeWidth?: number;
  /** For strokes: how the ends of open lines are painted. */
  readonly strokeCap?: 'butt' | 'round' | 'square';
  /** For strokes: how far mitres reach, in half widths of the line; none where corners are round or blunt. */
  readonly miterLimit?: number;
  /** For strokes: whether the line is broken into dashes. */
  readonly dashed?: boolean;
  /** The dashes; none where there are too many to be read. */
  readonly dashes?: readonly Dash[];
}

/** What a dash is of the centreline. */
export interface Dash {
  /** Of the centreline, by number. */
  readonly subpath: number;
  /** They follow one another; a dot is a single one without length. */
  readonly stretches: readonly DashInterval[];
}

/** A stretch of one curve of a subpath, between two parameters. */
export interface DashInterval {
  readonly curve: number;
  readonly from: number;
  readonly to: number;
}

/** The union of its parts; each part is read by its own fill rule. */
export interface Clip {
  readonly parts: readonly { readonly subpaths: readonly Subpath[]; readonly fillRule: FillRule }[];
  /** A box in mm where the clip is one: cheaper to apply. */
  readonly box?: Box;
}

export type Paint =
  /** `#rrggbb` in lower case. */
  | { readonly kind: 'colour'; readonly colour: string }
  | { readonly kind: 'none' }
  /** Gradients, patterns: painted, but not in one flat colour. `colour` is the fallback or a mean. */
  | { readonly kind: 'server'; readonly colour: string };

export interface DrawingProblem extends Wording {
  readonly check: 'not-cuttable' | 'unsupported' | 'unreadable-path' | 'unreadable-markup';
  readonly severity: 'error' | 'warning' | 'info';
  readonly span: Span;
}
