/** What a check says about a stencil. Plain data: hosts show it, mends act on it. */

import type { CheckId, Severity } from '../config/check-id';
import type { Point } from '../geometry/base/curve-types';
import type { Polygon } from '../geometry/base/polygon-types';
import type { CutLine, DoubledLine } from '../sheet/cut-lines/index';
import type { LayerId } from '../sheet/layer/layer-id';
import type { EdgeOpening } from '../sheet/sheet-edge';
import type { ThinPlace } from '../sheet/thin-places';
import type { Tongue } from '../sheet/tongues';
import type { Piece, Sheet } from '../sheet/types';
import type { BareGap, ShortOverlap } from '../stack/index';
import type { StackLayer } from '../stack/stack';
import type { Span } from '../text/text';
import type { Wording } from '../text/wording';

export type { CheckId, Severity };

export interface Finding extends Wording {
  readonly check: CheckId;
  readonly severity: Severity;
  /** The tightest text to underline. */
  readonly span: Span;
  /** The layer's name, for people. */
  readonly layer?: string;
  readonly layerId?: LayerId;
  /** Sheet mm. */
  readonly at?: Point;
  readonly measure?: Measure;
  readonly related: readonly Related[];
  /** What mends work on; only within the engine. */
  readonly subject?: Subject;
}

/**
 * A finding as its check yields it: of the check that its meta names, and as serious as that says unless it says so
 * itself.
 */
export type FindingDraft = Omit<Finding, 'check' | 'severity'> & { readonly severity?: Severity };

export interface Measure {
  readonly value: number;
  readonly limit: number;
  readonly unit: 'mm' | 'mm²';
}

export interface Related {
  readonly message: string;
  /** In another file of the stack, under the stack's name for it; in the finding's own where there is none. */
  readonly file?: string;
  readonly span: Span;
  readonly at?: Point;
}

/** That later layers paint over an island, so that it may as well be cut away. */
export interface IslandCover {
  /** As few as do so together, the one that covers most of it first. */
  readonly layers: readonly StackLayer[];
  /** Whether a rim of it stays bare that is narrower than the slip. */
  readonly rim: boolean;
}

/** Specks are openings and islands under `SPECK`; hairlines are other openings, and nowhere as wide as `HAIRLINE`. */
export type SpeckKind = 'speck' | 'hairline';

export type Subject =
  | { readonly kind: 'island'; readonly sheet: Sheet; readonly piece: Piece; readonly cover?: IslandCover }
  | {
      readonly kind: 'thin';
      readonly sheet: Sheet;
      readonly part: ThinPlace;
      /** Where it is told of many places at once: what would be told of each, this one first. */
      readonly apart?: readonly FindingDraft[];
    }
  | { readonly kind: 'tongue'; readonly sheet: Sheet; readonly tongue: Tongue }
  | { readonly kind: 'doubled'; readonly sheet: Sheet; readonly doubled: DoubledLine }
  | { readonly kind: 'open'; readonly sheet: Sheet; readonly lines: readonly CutLine[] }
  | { readonly kind: 'colours'; readonly sheet: Sheet }
  | { readonly kind: 'opening'; readonly sheet: Sheet; readonly opening: Polygon }
  | { readonly kind: 'specks'; readonly sheet: Sheet; readonly of: SpeckKind }
  | { readonly kind: 'edge'; readonly openings: readonly EdgeOpening[] }
  | {
      readonly kind: 'overlap';
      readonly earlier: StackLayer;
      readonly later: StackLayer;
      readonly overlap: ShortOverlap;
    }
  | {
      readonly kind: 'gap';
      readonly earlier: StackLayer;
      readonly later: StackLayer;
      readonly gap: BareGap;
      /** As of thin places. */
      readonly apart?: readonly FindingDraft[];
    };
