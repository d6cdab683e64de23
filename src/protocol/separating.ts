/**
 * What is said of a picture that becomes sheets: between the panel's page and the extension, and between the extension
 * and the thread that separates. Plain data.
 */
import type { LeftOutBox, MergedColours } from '../config/types';

/** What the artist says. Lengths in mm at the size the sheets are cut; colours `#rrggbb`. */
export interface PictureDials {
  readonly width: number;
  /** How many paints. */
  readonly colours: number;
  /** Paints that never change. */
  readonly paints: readonly string[];
  /** Where nothing is said, what the material bears. */
  readonly detail?: number | undefined;
  readonly follow?: number | undefined;
  readonly ground?: string | undefined;
  readonly leaveOut: readonly (string | LeftOutBox)[];
  readonly outline: boolean;
  readonly merged: readonly MergedColours[];
  readonly order: readonly string[];
  /** Whether the bridges are added that islands need, when the sheets are written. */
  readonly bridges: boolean;
}

/** Pixels, row by row: red, green, blue and alpha. */
export interface ShownPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

export interface ShownLayer {
  readonly name: string;
  readonly paint: string;
  /** Path data in mm; filled by the even-odd rule. */
  readonly outline: string;
  readonly islands: number;
  /** Of the picture, 0..1. */
  readonly share: number;
}

/** A separation as the page shows it. */
export interface ShownSeparation {
  /** mm */
  readonly width: number;
  readonly height: number;
  /** First sprayed first. */
  readonly layers: readonly ShownLayer[];
  readonly unpainted: readonly string[];
  readonly isDrawing: boolean;
  /** Mean CIEDE2000 between the picture and its palette. */
  readonly difference: number;
  readonly nodes: number;
  /** mm, those that hold: stated or usual. */
  readonly detail: number;
  readonly follow: number;
  readonly islands: { readonly alone: number; readonly ordered: number };
  /** What is too fine to be cut: its share of the picture, and 1 for each such pixel. */
  readonly tooFine: number;
  readonly fine: { readonly width: number; readonly height: number; readonly data: Uint8Array };
}

export type ToSeparator =
  /** @property before the text of `tombolo.json`; empty where there is none */
  | { readonly type: 'open'; readonly bytes: Uint8Array; readonly before: string }
  /** Answered twice: roughly, and in full when nothing newer was asked for meanwhile. */
  | { readonly type: 'separate'; readonly id: number; readonly dials: PictureDials }
  | { readonly type: 'sheets'; readonly id: number; readonly dials: PictureDials; readonly project: SheetsProject };

/** Where sheets are written. */
export interface SheetsProject {
  /** The drawing's name in the folder. */
  readonly file: string;
  /** The picture, seen from the folder. */
  readonly picture: string;
  /** The text of `tombolo.json` that stands there; empty where there is none. */
  readonly before: string;
}

export type FromSeparator =
  | { readonly type: 'opened'; readonly picture: ShownPicture; readonly dials: PictureDials }
  | { readonly type: 'answer'; readonly id: number; readonly isRough: boolean; readonly separation: ShownSeparation }
  | {
      readonly type: 'sheets';
      readonly id: number;
      readonly drawing: string;
      /** The text of `tombolo.json` with them. */
      readonly config: string;
      readonly bridges: number;
      readonly islands: number;
      /** Layers that are cut as two sheets in one paint, as one has no room for the bridges that its islands need. */
      readonly twoSheets: readonly string[];
    }
  /** @property message a clause that follows the picture's name */
  | { readonly type: 'refused'; readonly id: number; readonly message: string }
  | { readonly type: 'stopped'; readonly id: number };

export type ToPicturePage =
  | {
      readonly type: 'picture';
      readonly name: string;
      readonly picture: ShownPicture;
      readonly dials: PictureDials;
      /** Where the sheets go, as people say it. */
      readonly folder: string;
    }
  | Extract<FromSeparator, { readonly type: 'answer' }>
  | { readonly type: 'refused'; readonly id: number; readonly message: string }
  /** The sheets are being made, or that has ended. */
  | { readonly type: 'writing'; readonly isWriting: boolean; readonly said: string }
  | { readonly type: 'folder'; readonly folder: string };

export type FromPicturePage =
  | { readonly type: 'ready' }
  | { readonly type: 'separate'; readonly id: number; readonly dials: PictureDials }
  | { readonly type: 'write'; readonly id: number; readonly dials: PictureDials }
  /** Stop making the sheets. */
  | { readonly type: 'stop' }
  | { readonly type: 'chooseFolder' };
