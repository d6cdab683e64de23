/** What the server and the worker that runs the engine say to each other. Plain data only. */
import type { Config } from '../config/types';
import type { FindingId, GeneratorMarks, ShapeDescription } from '../engine/index';
import type { CheckFacts } from './facts';
import type { Offer, OfferFacts, Proof } from './offers';
import type { Priority } from './run-signals';

/** A document that a check reads. */
export interface CheckedFile {
  /** The project's name for it; empty for a document alone. */
  readonly name: string;
  readonly uri: string;
  /** 0 for a file that is not open in the editor. */
  readonly version: number;
  readonly open: boolean;
  /** Left out where it is the one that was sent last. */
  readonly text?: string;
  /** What a program that was watched left of this text. */
  readonly marks?: GeneratorMarks;
}

/** The `tombolo.json` in force. */
export interface ConfigFile {
  readonly uri: string;
  readonly text: string;
  readonly config: Config;
}

/** A document alone, or all files of a project. */
export interface CheckRequest {
  readonly kind: 'check';
  /** What is checked, from one version to the next: a document's address, or that of the project's `tombolo.json`. */
  readonly key: string;
  readonly files: readonly CheckedFile[];
  readonly config: ConfigFile | undefined;
  readonly project: boolean;
  /** Check it though nobody has called it a stencil. */
  readonly always: boolean;
}

/** A place in a document that was checked. */
interface PlaceOf {
  readonly uri: string;
  /** That of the facts: the worker answers for no other. */
  readonly version: number;
  /** UTF-16 offset into that version. */
  readonly offset: number;
}

/** What can be done at a place that no finding asks for: change a bridge, add register marks. */
export interface RefactorsRequest extends PlaceOf {
  readonly kind: 'refactors';
}

export interface HoverRequest extends PlaceOf {
  readonly kind: 'hover';
}

/** Whether the text at a place draws a side of a bridge. */
export interface BridgeSideRequest extends PlaceOf {
  readonly kind: 'bridgeSide';
}

/** A bridge as the text tells of it: mm as cut, and mm from bank to bank. */
export interface BridgeSize {
  readonly width: number;
  readonly length: number;
}

/** A little picture of the place that a finding is about. */
export interface PlacePictureRequest {
  readonly kind: 'placePicture';
  readonly uri: string;
  readonly version: number;
  readonly finding: FindingId;
}

/** The offers of a document's findings, and what is known of them. */
export interface OffersRequest {
  readonly kind: 'offers';
  readonly uri: string;
  readonly version: number;
}

/** Prove an offer. */
export interface ProveRequest {
  readonly kind: 'prove';
  readonly uri: string;
  readonly version: number;
  readonly id: string;
  /** Where the caret was, for a bridge that is wanted there. */
  readonly offset?: number;
}

/** All safe fixes of a document that do not meddle with each other, as one. */
export interface ProveSafeRequest {
  readonly kind: 'proveSafe';
  readonly uri: string;
  readonly version: number;
}

/** A question of the bench, under the name that the editor asks it by. */
export interface BenchQuestion {
  readonly kind: 'bench';
  readonly method: string;
  readonly params: { readonly uri: string };
  /** An open `tombolo.json` of the project. */
  readonly openConfig?: { readonly version: number; readonly text: string };
}

export type EngineRequest =
  | CheckRequest
  | HoverRequest
  | BridgeSideRequest
  | PlacePictureRequest
  | OffersRequest
  | RefactorsRequest
  | ProveRequest
  | ProveSafeRequest
  | BenchQuestion;

export interface EngineAnswers {
  readonly check: CheckFacts;
  /** Null where the text there draws nothing that has an area; undefined where it is of no version that is known. */
  readonly hover: ShapeDescription | null | undefined;
  readonly bridgeSide: BridgeSize | undefined;
  /** The text of an SVG file. */
  readonly placePicture: string | undefined;
  readonly offers: OfferFacts | undefined;
  readonly refactors: readonly Offer[];
  readonly prove: Proof;
  readonly proveSafe: Proof;
  /** Null where the worker knows no such document. */
  readonly bench: unknown;
}

export type ToWorker =
  | { readonly type: 'start'; readonly memory: ArrayBufferLike }
  | { readonly type: 'ask'; readonly id: number; readonly priority: Priority; readonly request: EngineRequest }
  | { readonly type: 'cancel'; readonly id: number }
  /** Where the caret was last: what is near is proven first. */
  | { readonly type: 'caret'; readonly uri: string; readonly offset: number }
  /** Checks that nobody needs any more, by their keys. */
  | { readonly type: 'forget'; readonly key: string };

export type FromWorker =
  | { readonly type: 'answer'; readonly id: number; readonly answer: unknown }
  | { readonly type: 'cancelled'; readonly id: number }
  | { readonly type: 'failed'; readonly id: number; readonly message: string }
  /** Unasked: what has been found out ahead. */
  | { readonly type: 'offers'; readonly facts: OfferFacts };
