/** What the engine gives its hosts. `engine.ts` makes it; the server, the command line and the preview show it. */
import type { CheckId, Finding } from './checks/finding';
import type { Drawing } from './drawing/drawing';
import type { Sheet } from './sheet/sheet';
import type { TextEdit } from './text';

export interface Report {
  readonly text: string;
  readonly drawing: Drawing;
  /** In painting order. */
  readonly sheets: readonly Sheet[];
  /** Most serious first, then in the order of the text. Capped for each check; the cap says how many were left out. */
  readonly findings: readonly Finding[];
  /** Milliseconds of the whole run. */
  readonly elapsed: number;
}

/** A change to the artist's text that was proven, by checking the edited text, to mend what it says. */
export interface Mend {
  /** Stable name of the kind of mend, for hosts: `bridge-island`, `bridge-layer`, `cut-island-away`, … */
  readonly kind: string;
  /** For the lightbulb: "Bridge this island (2 bridges of 0.80 mm)". */
  readonly title: string;
  readonly check: CheckId;
  readonly preferred: boolean;
  /** Safe mends change nothing that is cut or painted; only those may run on save. */
  readonly safe: boolean;
  readonly edits: readonly TextEdit[];
}
