/** What the editor asks the server about cutting: how long it takes, in which order, and what is written. Plain data only. */
import type { ContourKind, CutFormat, LayerId } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import type { DocumentParams } from './index';

/** Editor to server: what each sheet takes to cut. Answers `CutFigures | null`. */
export const CUT_FIGURES = 'tombolo/cutFigures';
/** Editor to server: the cuts of one layer's sheet in order. Takes `LayerParams`, answers `CutOrder | null`. */
export const CUT_ORDER = 'tombolo/cutOrder';
/** Editor to server: the files for the cutter. Takes `CutFilesParams`, answers `FilesToWrite | null`. */
export const CUT_FILES = 'tombolo/cutFiles';
/** Editor to server: the page that hangs at the wall. Answers `FilesToWrite | null`. */
export const JOB_FILES = 'tombolo/jobFiles';

export interface CutFigures {
  readonly version: number;
  /** In spray order. */
  readonly sheets: readonly SheetFigures[];
  /** mm: what the cutter takes away, where the files have to allow for it; else 0. */
  readonly kerf: number;
}

export interface SheetFigures {
  readonly layer: LayerId;
  readonly cuts: number;
  /** mm that are cut, and that the tool goes between cuts. */
  readonly length: number;
  readonly travel: number;
  /** Of the machine, with its ways; undefined where its speed and acceleration are not stated. */
  readonly seconds: number | undefined;
}

export interface CutOrder {
  readonly version: number;
  readonly layer: LayerId;
  readonly cuts: readonly OrderedCut[];
  /** Where the tool begins and ends, in sheet mm. */
  readonly home: Point;
}

/** Places in sheet mm. */
export interface OrderedCut {
  readonly kind: ContourKind;
  /** Path data within 0.01 mm of the line. */
  readonly line: string;
  readonly from: Point;
  readonly to: Point;
  /** mm */
  readonly length: number;
}

/** What is put on a sheet so that it can be told. */
export type SheetMarks = 'none' | 'labels' | 'notches';

export interface CutFilesParams extends DocumentParams {
  readonly as: readonly CutFormat[];
  /** mm that the tool takes away; 0 where nothing is allowed for. */
  readonly kerf: number;
  readonly marks: SheetMarks;
  /** Whether they are wanted although errors are left. */
  readonly anyway: boolean;
}

export interface FilesToWrite {
  readonly version: number;
  /** None where errors are left and that was not wanted. */
  readonly files: readonly { readonly name: string; readonly text: string }[];
  /** How many errors are left, and what the first one says. */
  readonly errors: number;
  readonly first: string | undefined;
  /** What the artist should know of these sheets, and of the material and the tool: one sentence each. */
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  readonly seconds: number | undefined;
}
