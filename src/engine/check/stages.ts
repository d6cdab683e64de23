/** What comes out of the stages of a run, between the text and the report. */

import type { Drawing } from '../../drawing/types';
import type { Report } from '../../report/report';
import type { ArtworkKey } from '../../sheet/layer/artwork-key';
import type { ShapeGroup } from '../../sheet/layer/layers';
import type { Sheet } from '../../sheet/types';
import type { Lack, Skipped } from './run-watch';

/** A file that was read and measured, before anything is checked. */
export interface ReadFile {
  readonly text: string;
  /** Empty where it could not be read within the budget. */
  readonly drawing: Drawing;
  /** Why the text was not read. */
  readonly unread: Lack | undefined;
  readonly sheets: readonly Sheet[];
  /** For each sheet, what it was made from. */
  readonly origins: readonly SheetOrigin[];
  /** Layers that there was no time or no memory for, or that failed. */
  readonly skipped: readonly Skipped[];
}

export interface SheetOrigin {
  /** Which of the file's entries in `layers` it belongs to; 0 for a file that stands alone. */
  readonly entry: number;
  /** The answer that its measures are. */
  readonly measures: number;
}

/** A layer before it is measured, with the paint that was stated for it elsewhere. */
export interface PlannedGroup extends ShapeGroup {
  readonly entry: number;
  readonly paint?: string | undefined;
}

export interface PlannedLayer {
  readonly group: PlannedGroup;
  readonly key: ArtworkKey;
}

/** What the checks found in a file, by all that the configuration says. */
export interface Found extends Pick<Report, 'findings' | 'complete' | 'results' | 'passed'> {
  /** Whether there was time for everything. */
  readonly whole: boolean;
}
