/** What a check says of itself. Engine, schema, SARIF, README and hosts read it; no list of checks stands elsewhere. */
import type { CheckId, Severity } from '../config/check-id';
import type { Finding } from './finding';

export interface CheckMeta {
  readonly id: CheckId;
  /** One sentence, for lists of checks. */
  readonly summary: string;
  /** What a change brings that it comes of, after "would": "leave a loose tongue". */
  readonly outcome: string;
  /** How serious it is unless the configuration says otherwise; single findings may differ. */
  readonly severity: Severity;
  /** Whether the file and its configuration decide what is found, or the other layers of the stack too. */
  readonly reads: 'file' | 'stack';
  /**
   * Set where a check that reads the stack finds the same whatever the other layers are, and only says it in other words:
   * its findings are then known by their file alone.
   */
  readonly foundIn?: 'file';
  /** The names of the fix kinds that are tried for its findings, in the order offered; none where it has no fix. */
  readonly fixes: readonly string[];
  /** What is best done about a finding, as a request: 'Extend "Water" under "Fur"'. None where no fix does it. */
  readonly cure?: (finding: Finding) => string | undefined;
  /** Whether a finding may be accepted: what the reading of a file left out cannot be. */
  readonly acceptable: boolean;
  /** What its findings mean for a fix that they come of. They refuse none where nothing is said. */
  readonly afterFix?: AfterFix;
  /** Its row in the table of the README; the engine's own have none. */
  readonly row?: TableRow;
}

/** What it means for the proof of a fix when a finding, a warning or worse, is new or worse after it. */
export interface AfterFix {
  /** The fix is not offered. Otherwise it is, and says what it brings. */
  readonly refuses: boolean;
  /** It cannot be wanted: who asks for the fix anyway does not get it either. */
  readonly never?: true;
  /** What a fix may do that one must expect the finding of: then it is only told. */
  readonly unless?: readonly Effect[];
  /** Checks of one family find the same kind of fault: what one of them told before, another may tell after. */
  readonly family?: string;
  /** Its faults are the file's: one that is told in another layer, or of the file as a whole, may be the same. */
  readonly ofFile?: true;
}

/**
 * What a fix does to the sheet beside mending its finding. `adds-opening`: a line becomes an opening, with all that an
 * opening may have. `removes-bridge`: what hung on it may hang no more. `holds-island`: what fell out stays, and its
 * parts may lift.
 */
export type Effect = 'adds-opening' | 'removes-bridge' | 'holds-island';

export interface TableRow {
  /** What goes wrong in card and paint. */
  readonly wrong: string;
  /** What one click does about it. */
  readonly click: string;
}
