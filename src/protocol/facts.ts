/** What the server keeps of a checked document, so that it can answer while the worker is busy. Plain, small data. */
import type { Measure } from '../checks/finding';
import type { CheckId, Severity } from '../config/check-id';
import type { FindingId, Generator, OutlineItem } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import type { Span } from '../text/text';
import type { Wording } from '../text/wording';
import type { Summary } from './index';

export interface DocumentFacts {
  readonly uri: string;
  /** 0 for a file that is not open in the editor. */
  readonly version: number;
  readonly open: boolean;
  /** Whether somebody has called it a stencil. */
  readonly stencil: boolean;
  /** As the report has them: the most serious first. */
  readonly findings: readonly FindingFact[];
  readonly outline: readonly OutlineItem[];
  readonly tags: TagFacts;
  readonly summary: Summary;
  /** The programs that draw it, as they are named there. */
  readonly programs: readonly string[];
}

export interface FindingFact extends Wording {
  readonly id: FindingId;
  readonly check: CheckId;
  readonly severity: Severity;
  readonly span: Span;
  readonly related: readonly RelatedFact[];
  /** Sheet mm. */
  readonly at: Point | undefined;
  readonly measure: Measure | undefined;
  readonly layer: string | undefined;
  /** Where a program draws what it is about, where that is known. */
  readonly from?: Generator;
}

export interface RelatedFact {
  readonly message: string;
  readonly uri: string;
  readonly span: Span;
}

/** The start tags of all elements that draw something, in the order of the text: parallel lists. */
export interface TagFacts {
  readonly from: Uint32Array;
  readonly to: Uint32Array;
  /** Index into `layers`; beyond the last where the element is in none or in several. */
  readonly layer: Uint32Array;
  readonly layers: readonly LayerFact[];
}

export interface LayerFact {
  readonly name: string;
  readonly paint: string;
  readonly reading: string;
}

/** What a check of a document, or of all files of a project, gave. */
export interface CheckFacts {
  /** One for a document alone; of a project those of its files that are there, by its names for them. */
  readonly documents: readonly (DocumentFacts & { readonly name: string })[];
  /** What only shows in `tombolo.json` when the files are looked at, for the text that was in force. */
  readonly amiss: ProjectFaults | undefined;
  /** Milliseconds of the whole run. */
  readonly elapsed: number;
}

/** What is wrong with a project's `tombolo.json`, told at any later text of it. */
export interface ProjectFaults {
  readonly layers: readonly (Wording & { readonly from: string; readonly severity: 'error' | 'warning' })[];
  readonly acceptances: readonly (Wording & { readonly check: CheckId })[];
}
