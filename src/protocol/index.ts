/** What the server and the editor say to each other beyond the language server protocol. Plain data only. */
import type { Measure } from '../checks/finding';
import type { CheckId, Severity } from '../config/check-id';
import type { Reading } from '../config/types';
import type { FindingId, LayerId } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';
import type { PictureLayer } from '../picture/scene';
import type { TextEdit } from '../text/text';
import type { Wording } from '../text/wording';
import type { DocumentEdits } from './offers';

/** Server to editor, after each run: what the status item shows. The bench asks for the stack when it hears it. */
export const CHECKED = 'tombolo/checked';
/**
 * Editor to server: the painted stack that a document is part of, checked now if it has changed. Of a file of a project
 * that is the stack of the whole project. Answers `Stack | null`.
 */
export const STACK = 'tombolo/stack';
/** Editor to server: what the text at an offset draws. Answers `MarkedShape | null`. */
export const SHAPE_AT = 'tombolo/shapeAt';
/** Editor to server: check a document now, whatever `tombolo.run` says. Answers null when the run is done. */
export const CHECK_AGAIN = 'tombolo/checkAgain';
/**
 * Editor to server: check a file that need not be open, and publish what is found in it until it changes on disk.
 * Answers `FileChecked | null`.
 */
export const CHECK_FILE = 'tombolo/checkFile';
/** Editor to server: all fixes of a document that change nothing that is cut or painted. Answers `SafeFixes | null`. */
export const FIX_SAFE = 'tombolo/fixSafe';
/** Editor to server: how a document would begin as a stencil. Takes `BeginParams`, answers `Beginning | null`. */
export const BEGIN = 'tombolo/begin';
/** Editor to server: bridges for every island of a document. Answers `BridgedIslands | null`. */
export const BRIDGE_ISLANDS = 'tombolo/bridgeIslands';
/** Editor to server: line breaks for long path data of a document. Answers `VersionedEdits | null`. */
export const WRAP_PATHS = 'tombolo/wrapPaths';
/** Editor to server: a bridge at a place of the picture. Answers `BridgeAnswer`. */
export const BRIDGE_AT = 'tombolo/bridgeAt';
/** Editor to server: the bridges that a mend of a finding would put in. Answers `BridgeAnswer`. */
export const BRIDGE_PLAN = 'tombolo/bridgePlan';

export interface DocumentParams {
  readonly uri: string;
}

export interface PlaceParams extends DocumentParams {
  /** UTF-16 offset into the text. */
  readonly offset: number;
}

/** Path data as in the stack, and the text of the element that draws it. */
export interface MarkedShape {
  readonly outline: string;
  /** The layers that have a part of it. */
  readonly layers: readonly LayerId[];
  readonly from: number;
  readonly to: number;
}

export interface Checked {
  readonly uri: string;
  readonly version: number;
  /** False for an SVG that nobody has called a stencil: nothing was checked, and nothing else is set. */
  readonly stencil: boolean;
  readonly summary?: Summary;
}

export interface Summary {
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly sizeStated: boolean;
  /** Whether the `tombolo.json` in force states it, which goes before what the file says. */
  readonly sizeInConfig?: true;
  readonly readings: readonly Reading[];
  readonly layers: number;
  /** Seconds that cutting all of the file's sheets takes, where speed and acceleration are stated. */
  readonly cutTime?: number;
  readonly counts: Readonly<Record<Severity, number>>;
  /** Milliseconds of the run. */
  readonly elapsed: number;
  /** The `tombolo.json` in force. */
  readonly config: string | undefined;
  /** How many errors there are in it. */
  readonly configErrors?: number;
  /** How many findings are not shown, as there are too many of their checks. */
  readonly leftOut?: number;
  /** Whether the run ended before all was looked at. */
  readonly unfinished?: true;
  /** Whether it is of an earlier text, as the check of the present one came to no end. */
  readonly outdated?: true;
}

/** What was found in a file. */
export interface FileChecked {
  /** False for what nobody has called a stencil: then there is nothing to count. */
  readonly stencil: boolean;
  readonly counts: Readonly<Record<Severity, number>>;
}

/** Edits of each document, the one that was asked about first; or one sentence that says why there are none. */
export type SafeFixes = { readonly documents: readonly DocumentEdits[] } | { readonly refusal: string };

export interface VersionedEdits {
  readonly version: number;
  readonly edits: readonly TextEdit[];
}

export interface BeginParams extends DocumentParams {
  /** How wide the artwork is to be cut, as the artist wrote it, with its unit. */
  readonly width?: string;
}

/** Edits that mark a document as a stencil; none where it is one already. */
export interface Beginning extends VersionedEdits {
  readonly stencil: boolean;
  /** mm: how wide the artwork is now. */
  readonly width: number;
  readonly sizeStated: boolean;
  /**
   * Edits of the same text that write the width asked for, and the height that goes with it, into the file itself; none
   * where it says so already, undefined where no length was asked for or a style sets the size.
   */
  readonly sizeEdits?: readonly TextEdit[];
}

export interface BridgeIslandsParams extends DocumentParams {
  /** Whether islands that later layers paint over are cut away, and only the others bridged. */
  readonly cutCovered?: boolean;
}

export interface BridgedIslands extends VersionedEdits {
  readonly bridges: number;
  /** One sentence for each island that could not be bridged. */
  readonly refusals: readonly string[];
  /** How many islands need no bridge, as later layers paint over them; those that were cut away instead. */
  readonly covered: number;
  readonly cutAway: number;
}

export interface BridgeAtParams extends DocumentParams {
  readonly layer: LayerId;
  /** Of the document that the layer is cut from: a bridge is made for no other. */
  readonly version: number;
  /** On an island or in the gap round it, in sheet mm. */
  readonly point: Point;
}

export interface BridgePlanParams extends DocumentParams {
  /** In any file of the stack. It holds while what it was found in does. */
  readonly finding: FindingId;
  /** Which of the finding's mends, such as `bridge-island-shortest`; by default the preferred one. */
  readonly mend?: string;
}

/** Bridges that were planned, cut and proven, but are not in the text yet. */
export interface BridgeOffer extends VersionedEdits {
  /**
   * The document that the edits and their version are for: the layer's own, not always the one that was asked about.
   */
  readonly uri: string;
  /** The name of the mend, as `BridgePlanParams.mend` takes it; `bridge-here` at a place of the picture. */
  readonly kind: string;
  /** "Bridge this island (2 bridges of 0.80 mm)" */
  readonly title: string;
  readonly bridges: readonly BridgePreviewData[];
  /** Islands that go instead, where later layers paint over them. */
  readonly cutAway?: readonly CutPreviewData[];
}

/** Why there is no offer, and what there is instead. */
export interface BridgeRefusal {
  readonly version: number;
  /** One short sentence. */
  readonly reason: string;
  /** What to do first, as a sentence: 'Extend "Water" under "Fur" first.' */
  readonly first?: string;
  /** The very bridges that were asked for: they hold, but leave new faults behind, which the title names. */
  readonly anyway?: BridgeOffer;
}

export type BridgeAnswer = BridgeOffer | BridgeRefusal | null;

/** An island that is cut away. */
export interface CutPreviewData {
  readonly layer: LayerId;
  /** Path data as in the stack. */
  readonly outline: string;
}

export interface BridgePreviewData {
  readonly layer: LayerId;
  /** The strip that stays, from edge to edge of the gap and a little into both: path data as in the stack. */
  readonly outline: string;
  /** The ends of its middle line on both edges of the gap, in sheet mm. */
  readonly from: Point;
  readonly to: Point;
  /** mm as cut */
  readonly width: number;
  /** mm */
  readonly length: number;
  /** Which share of it later layers leave bare to be seen, 0..1. */
  readonly shown: number;
}

/** The stack in our own numbers. Path strings hold `M`, `L` and `Z` with coordinates in sheet mm, rounded to 1 µm. */
export interface PreviewStack {
  /** The document that was asked about. */
  readonly uri: string;
  readonly version: number;
  /** Every document that layers or findings come from, the one that was asked about first. */
  readonly documents: readonly PreviewDocument[];
  readonly stencil: boolean;
  readonly elapsed: number;
  /** The artwork's frame in mm; of several files the one that holds them all. */
  readonly width: number;
  readonly height: number;
  readonly sizeStated: boolean;
  /** The sheet's rectangle: frame plus margin. */
  readonly sheet: Box;
  /** The cutter's bed, width and height in mm, where the project says it. */
  readonly bed?: readonly [number, number];
  /** What the project says is painted on, `#rrggbb`. */
  readonly ground?: string;
  /** How many errors there are in the `tombolo.json` in force; none where it is left out. */
  readonly configErrors?: number;
  /** mm: how far one sheet may land from where it should. */
  readonly slip: number;
  /** What slip each two neighbours bear that do not bear `slip`; undefined where it was not measured. */
  readonly safeSlips?: readonly SafeSlip[];
  /** In painting order. */
  readonly layers: readonly PreviewLayer[];
  readonly findings: readonly PreviewFinding[];
}

export interface PreviewDocument {
  readonly uri: string;
  /** 0 for a file that is not open in the editor: then its text is that on disk. */
  readonly version: number;
}

export interface SafeSlip {
  /** Indices into the layers. */
  readonly layers: readonly [number, number];
  /** mm */
  readonly safe: number;
}

export interface PreviewLayer extends PictureLayer {
  /** What it is asked about by. */
  readonly id: LayerId;
  /** The document that it is cut from. */
  readonly uri: string;
  readonly reading: Reading;
  readonly readingStated: boolean;
  readonly openingCount: number;
  /** mm² */
  readonly openingArea: number;
  readonly materialArea: number;
  /** mm */
  readonly cutLength: number;
}

export interface PreviewFinding extends Wording {
  /** What people call it by. It keeps the number while the text is edited, and no other finding of the stack gets it. */
  readonly number: number;
  /** What it is asked about by. */
  readonly id: FindingId;
  /** The document that it lies in. */
  readonly uri: string;
  readonly check: CheckId;
  readonly severity: Severity;
  /** Index into the layers of the same stack; undefined where the finding is about the whole file. */
  readonly layer: number | undefined;
  readonly at: Point | undefined;
  readonly measure: Measure | undefined;
  /** Whether it is about an island, which bridges can be planned for. */
  readonly island: boolean;
  /** The two facing points of a thin place. */
  readonly chord: readonly [Point, Point] | undefined;
  /** The text that is underlined, as offsets into its document in the version that the stack lists. */
  readonly from: number;
  readonly to: number;
}
