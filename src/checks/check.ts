/** What every check is: a pure function from a measured stencil to findings. */

import type { Limits } from '../config/limits';
import type { Config } from '../config/types';
import type { Drawing } from '../drawing/types';
import type { SourceIndex } from '../sheet/source-index';
import type { Sheet } from '../sheet/types';
import type { Stack } from '../stack/stack';
import type { FindingDraft } from './finding';
import type { CheckMeta } from './meta';

/**
 * A check that reads one file: what it finds holds as long as the file is the same. The engine adds to each finding
 * whose it is, and how serious where the finding does not say so itself.
 */
export interface Check {
  readonly meta: CheckMeta & { readonly reads: 'file' };
  run(stencil: Stencil): Iterable<FindingDraft>;
}

/** A check that reads the whole stack: any change of another layer may change what it finds. */
export interface StackCheck {
  readonly meta: CheckMeta & { readonly reads: 'stack' };
  run(stencil: StackStencil): Iterable<FindingDraft>;
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
