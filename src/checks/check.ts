/** What every check is: a pure function from a measured stencil to findings. */
import type { Drawing } from '../drawing/types';
import type { CheckId, Severity } from '../config/check-id';
import type { Config } from '../config/types';
import type { Limits } from '../config/limits';
import type { Sheet } from '../sheet/types';
import type { Stack } from '../stack/stack';
import type { SourceIndex } from '../sheet/source-index';
import type { Finding } from './finding';

interface AnyCheck {
  readonly id: CheckId;
  /** How serious it is unless the configuration says otherwise; single findings may differ. */
  readonly severity: Severity;
}

/** A check that reads one file: what it finds holds as long as the file is the same. */
export interface Check extends AnyCheck {
  readonly reads?: 'file';
  run(stencil: Stencil): Iterable<Finding>;
}

/** A check that reads the whole stack: any change of another layer may change what it finds. */
export interface StackCheck extends AnyCheck {
  readonly reads: 'stack';
  run(stencil: StackStencil): Iterable<Finding>;
}

/** All that was read and measured of one file. */
export interface Stencil {
  readonly drawing: Drawing;
  readonly config: Config;
  readonly limits: Limits;
  readonly sheets: readonly Sheet[];
  /** The name that the stack has for this file. */
  readonly file: string;
  /** From places on a sheet back to the text. */
  sources(sheet: Sheet): SourceIndex;
}

/** The same, with the print that this file's sheets are part of. A check reports what this file can mend. */
export interface StackStencil extends Stencil {
  readonly stack: Stack;
}
