/** What is said of programs that draw: by whoever runs them, by the server, and by the editor. */

import type { GeneratorMarks, LayerId } from '../engine/index';
import type { Span } from '../text/text';
import type { DocumentParams } from './index';

/**
 * What the last run of a watched program left, as a JSON file outside of its project: `tombolo watch --marks` writes one
 * whole after each good run, and removes it when it ends.
 */
export interface ProgramMarks {
  readonly version: 1;
  /** The folder that places are relative to. */
  readonly root: string;
  readonly drawings: readonly MarkedDrawing[];
}

export interface MarkedDrawing {
  readonly file: string;
  /** `hashOfText` of the text that the marks hold for, without its byte order mark. */
  readonly hash: string;
  /** Undefined where it is not known what drew it. */
  readonly marks?: GeneratorMarks;
}

/** Server to editor: `Programs`, all programs whose drawings are known now, whenever they are others than before. */
export const PROGRAMS = 'tombolo/programs';
/** Editor to server: what lines of a program draw in one of its drawings. Takes `DrawnAtParams`, answers `DrawnThere | null`. */
export const DRAWN_AT = 'tombolo/drawnAt';
/** Editor to server: the place that draws what stands there. Takes `DrawnByParams`, answers `ProgramRange | null`. */
export const DRAWN_BY = 'tombolo/drawnBy';
/** Editor to server: bridges for the islands of a closed or open drawing, as a plan. Answers `KeptPlan | null`. */
export const KEPT_PLAN = 'tombolo/keptPlan';

/** Commands of the editor that are offered at a line of a program. */
/** Takes the address of the drawing: its bridges come again with each build. */
export const KEEP_BRIDGES = 'tombolo.keepBridges';
/** Takes the address of the drawing, and the range to show. */
export const OPEN_DRAWING = 'tombolo.openDrawing';
/** Takes `AcceptDrawn`: asks why, and writes it into `tombolo.json`. */
export const ACCEPT_DRAWN = 'tombolo.acceptDrawn';

export interface AcceptDrawn {
  readonly check: string;
  readonly drawing: string;
  /** The address of the `tombolo.json` in force, where there is one. */
  readonly config?: string;
  /** Where in the drawing; an empty part is all of it. */
  readonly parts: readonly { readonly id?: string; readonly layer?: string }[];
  /** The same in words. */
  readonly where: string;
}

export interface KeptPlan {
  /** Of the plan's file. */
  readonly text: string;
  readonly bridges: number;
  /** One sentence for each island that could not be bridged. */
  readonly refusals: readonly string[];
}

export interface Programs {
  readonly programs: readonly ProgramDrawings[];
}

export interface ProgramDrawings {
  readonly uri: string;
  /** Addresses of SVG files. */
  readonly drawings: readonly string[];
}

/** `uri` is the drawing's. */
export interface DrawnAtParams extends DocumentParams {
  readonly program: string;
  /** From zero. */
  readonly line: number;
}

/** What the worker is asked: under the names that the drawing has for the program. */
export interface DrawnAtPaths extends DocumentParams {
  readonly paths: readonly string[];
  readonly line: number;
}

export interface DrawnThere {
  /** How many shapes. */
  readonly times: number;
  readonly openings: number;
  /** mm² */
  readonly area: number;
  /** Names of layers. */
  readonly layers: readonly string[];
  /** Path data in sheet mm, as in the stack, and the layers that have a part of it. */
  readonly outline: string;
  readonly layerIds: readonly LayerId[];
}

export interface DrawnByParams extends DocumentParams, Span {}

export interface ProgramRange {
  readonly uri: string;
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
}
