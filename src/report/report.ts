/** What the engine gives its hosts. `engine.ts` makes it; the server, the command line and the preview show it. */
import type { Finding } from '../checks/finding';
import type { CheckId } from '../config/check-id';
import type { BaselineEntry, Config, PartAcceptance } from '../config/types';
import type { Drawing } from '../drawing/types';
import type { Point } from '../geometry/base/curve-types';
import type { Polygon } from '../geometry/base/polygon-types';
import type { LayerId } from '../sheet/layer/layer-id';
import type { Sheet } from '../sheet/types';
import type { Stack } from '../stack/stack';
import type { TextEdit } from '../text/text';
import type { Wording } from '../text/wording';
import type { ReportedFinding } from './finding-id';

/** How a file is to be read, beyond what it says itself. Lengths in mm. */
export interface Settings {
  /** From `tombolo.json`; all defaults where there is none. */
  readonly config?: Config;
  /** Override the size that is stated. */
  readonly width?: number;
  readonly height?: number;
  /** Override the kerf; the cut files are then taken as not compensated. */
  readonly kerf?: number;
  /** Read the whole file as one layer. */
  readonly oneLayer?: boolean;
  /** What `tombolo.json` calls a file that is checked by itself: entries of the baseline for others do not hold. */
  readonly file?: string;
  /**
   * Steps of work for each file, by default as many as a text of this length is worth (`src/engine/check/run-watch.ts`), and
   * without end where `budget` is `Infinity`: what would take more is left out, and said. It is the same on every machine.
   */
  readonly work?: number;
  /** Milliseconds, 120,000 by default: what a run has not finished by then is left out, and said. */
  readonly budget?: number;
  /** Bytes that the host's memory holds now; without it, memory is not watched. Asked every few milliseconds. */
  readonly memoryInUse?: () => number;
  /** Bytes that may be in use, by default 1 GiB more than when a run begins: what needs more is left out, and said. */
  readonly memoryBudget?: number;
  /** Whether nobody waits for the report any more: the run then throws `Stopped`. No report keeps it. */
  readonly cancelled?: () => boolean;
}

export interface Report {
  readonly text: string;
  /** Stands for the text and for all of the settings that findings depend on: the same for the same of both. */
  readonly version: string;
  readonly settings: Settings;
  readonly drawing: Drawing;
  /** In painting order. */
  readonly sheets: readonly Sheet[];
  /** Most serious first, then in the order of the text. Capped for each check; the cap says how many were left out. */
  readonly findings: readonly ReportedFinding[];
  /** All of them, without the cap: what mends are proven against. */
  readonly complete: readonly ReportedFinding[];
  /** What the baseline let pass, and by which of its entries. */
  readonly passed: Passed;
  /** The print that the sheets are part of: they alone, where the file is no part of a project. */
  readonly stack: Stack;
  /** Set where the file is part of a project. */
  readonly project?: ProjectPart;
  /** What each check found, acceptances and severities aside; only within the engine. */
  readonly results: readonly CheckResult[];
  /** The engine that made the report. */
  readonly session: Session;
  /** Milliseconds of the whole run. */
  readonly elapsed: number;
}

/** Findings that are not told because they were there before, or are accepted in a part of the project. */
export interface Passed {
  /** How many. */
  readonly count: number;
  /** Those of the configuration's `baseline` that let one pass. */
  readonly entries: readonly BaselineEntry[];
  /** Those of its acceptances in a part of the project that accepted one. */
  readonly accepted: readonly PartAcceptance[];
}

/**
 * The engine that made a report, as it can be asked on: it keeps what it has worked out, so that what a text has in
 * common with one that it knows is not worked out again.
 */
export interface Session {
  /**
   * Checks another state of the file, by itself.
   * @param trial whether it is only tried what would come of it: the next state then follows the present one
   */
  check(text: string, settings: Settings, trial?: boolean): Report;
  /** Checks another state of the project that the file is part of; see `check`. */
  checkProject(files: ReadonlyMap<string, string>, settings: Settings, trial?: boolean): ProjectReport;
  /**
   * What was worked out from this very report before, or is now.
   * @param what a name for it, the same for all reports
   */
  remember<Value>(what: string, compute: () => Value): Value;
}

/** Where a file stands in its project. */
export interface ProjectPart {
  /** Its name, relative to `tombolo.json`. */
  readonly file: string;
  readonly report: ProjectReport;
}

/** All files that one `tombolo.json` names in its `layers`, checked together. */
export interface ProjectReport {
  readonly settings: Settings;
  /** By name relative to `tombolo.json`, in the order of first mention; without those that are not there. */
  readonly files: ReadonlyMap<string, Report>;
  /** All layers in the order of `layers`. */
  readonly stack: Stack;
  /** Names of files that are named but not there. */
  readonly missing: readonly string[];
  readonly faults: readonly LayerFault[];
  /** The engine that made the report. */
  readonly session: Session;
  /** Milliseconds of the whole run. */
  readonly elapsed: number;
}

/** An entry of `layers` that names nothing that can be cut; the rest of the project is checked without it. */
export interface LayerFault extends Wording {
  /** As the entry has it. */
  readonly from: string;
  readonly severity: 'error' | 'warning';
}

/** What one check found in one file. */
export interface CheckResult {
  readonly check: CheckId;
  readonly findings: readonly Finding[];
}

/** Edits of one file of a project, under the project's name for it. */
export interface FileEdits {
  readonly file: string;
  readonly edits: readonly TextEdit[];
}

/** A bridge that is not in the text yet. Sheet mm. */
export interface BridgePreview {
  /** The layer's name, for people. */
  readonly layer: string;
  readonly layerId: LayerId;
  /** What stays of the opening: it reaches a little into both banks. */
  readonly strip: Polygon;
  /** The ends of its middle line. */
  readonly from: Point;
  readonly to: Point;
  /** As cut. */
  readonly width: number;
  readonly length: number;
  /** Which share of it later layers leave to be seen, 0..1. */
  readonly shown: number;
}

/** An island that is not cut away in the text yet. Sheet mm. */
export interface CutPreview {
  /** The layer's name, for people. */
  readonly layer: string;
  readonly layerId: LayerId;
  /** What becomes a part of the opening round it. */
  readonly place: Polygon;
}
