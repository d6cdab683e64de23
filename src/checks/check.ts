/** What every check is: a pure function from a measured stencil to findings. */

import type { CheckId, Severity } from '../config/check-id';
import type { Limits } from '../config/limits';
import type { Config } from '../config/types';
import type { Drawing } from '../drawing/types';
import type { SourceIndex } from '../sheet/source-index';
import type { Sheet } from '../sheet/types';
import type { Stack } from '../stack/stack';
import type { Finding } from './finding';

export interface Check {
  readonly id: CheckId;
  /** How serious it is unless the configuration says otherwise; single findings may differ. */
  readonly severity: Severity;
  run(stencil: Stencil): Iterable<Finding>;
}

/** All that was read and measured of one file. */
export interface Stencil {
  readonly drawing: Drawing;
  readonly config: Config;
  readonly limits: Limits;
  readonly sheets: readonly Sheet[];
  /** The name that the stack has for this file. */
  readonly file: string;
  /** The print that this file's sheets are part of. A check reports what this file can mend. */
  readonly stack: Stack;
  /** From places on a sheet back to the text. */
  sources(sheet: Sheet): SourceIndex;
}
