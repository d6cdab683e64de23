/**
 * What the engine works out, from the text to the findings, each from the answers before it: text → markup → drawing →
 * layers → sheets → file → stack → seams → checks → findings. The keys say on what each depends; an edit is worked out
 * again as far down as its keys change.
 */

import type { ConfigReading } from '../../config/read';
import type { ReadDrawing } from '../../drawing/index';
import type { SizeOptions } from '../../drawing/viewport/root-size';
import type { Region } from '../../geometry/base/polygon-types';
import { edgesIn, ringsOf } from '../../geometry/base/ring';
import type { MarkupDocument } from '../../markup/tree';
import type { CheckResult } from '../../report/report';
import type { ArtworkKey } from '../../sheet/layer/artwork-key';
import type { Artwork, MeasuredArtwork } from '../../sheet/measure';
import type { MeasuredSeams } from '../../stack/index';
import type { Stack } from '../../stack/stack';
import type { Found, PlannedLayer, ReadFile } from '../check/stages';
import type { Answer, CacheNode } from './cache';

/** A text with its hash, which is worked out once in a run. */
export interface HashedText {
  readonly text: string;
  readonly hash: string;
}

export const configNode: CacheNode<HashedText, ConfigReading> = {
  name: 'config',
  key: ({ hash }) => hash,
  bytes: ({ config }) => 4 * JSON.stringify(config).length,
};

export const markupNode: CacheNode<HashedText, MarkupDocument> = {
  name: 'markup',
  key: ({ hash }) => hash,
  bytes: ({ text }) => BYTES_PER_UNIT * text.length,
};

export const drawingNode: CacheNode<
  { readonly markup: Answer<MarkupDocument>; readonly size: SizeOptions },
  ReadDrawing
> = {
  name: 'drawing',
  key: ({ markup, size: { width, height } }) => `${markup.id} ${width} ${height}`,
  bytes: ({ drawing: { shapes }, outlines }) =>
    BYTES_PER_SHAPE * shapes.length +
    BYTES_PER_CURVE * outlines.reduce((sum, { traces }) => sum + traces.reduce((n, t) => n + t.curves.length, 0), 0),
};

/** The layers that a file is read as; `plan` stands for what `tombolo.json` and the settings say of them. */
export const layersNode: CacheNode<
  { readonly drawing: Answer<ReadDrawing>; readonly plan: string },
  readonly PlannedLayer[]
> = {
  name: 'layers',
  key: ({ drawing, plan }) => `${drawing.id} ${plan}`,
  bytes: (layers) => layers.reduce((sum, { group }) => sum + BYTES_PER_KEY * group.shapes.length, BYTES_PER_ENTRY),
};

/**
 * What one shape fills, by what stands for it: trials of the same change have most shapes in common with each other, though
 * not with the text that they start from.
 */
export const fillNode: CacheNode<number, Region> = {
  name: 'fill',
  key: (shape) => shape.toString(36),
  bytes: (region) => BYTES_PER_ENTRY + BYTES_PER_VERTEX * vertices(region),
};

/** The measures of a layer: by what it draws, so that whatever else stands in the text makes no difference. */
export const sheetNode: CacheNode<
  { readonly key: ArtworkKey; readonly artwork: Artwork; readonly measuring: string },
  MeasuredArtwork
> = {
  name: 'sheet',
  key: ({ key, artwork: { frame, reading, painted }, measuring }) =>
    `${key.whole} ${frame.maxX} ${frame.maxY} ${reading ?? (painted ? 'painted' : 'detected')} ${measuring}`,
  bytes: ({ measures }) =>
    BYTES_PER_ENTRY +
    BYTES_PER_VERTEX * (vertices(measures.openings) + vertices(measures.material)) +
    BYTES_PER_PART * (measures.thinMaterial.length + measures.thinOpenings.length + measures.pieces.length),
};

/** The colour of a layer that has several. */
export const paintNode: CacheNode<ArtworkKey, string> = {
  name: 'paint',
  key: ({ whole, colours }) => `${whole} ${colours}`,
  bytes: () => BYTES_PER_ENTRY,
};

export const fileNode: CacheNode<
  {
    readonly layers: Answer<readonly PlannedLayer[]> | undefined;
    /** Of each layer; undefined where it could not be measured. */
    readonly sheets: readonly (Answer<MeasuredArtwork> | undefined)[];
  },
  ReadFile
> = {
  name: 'file',
  key: ({ layers, sheets }) => `${layers?.id} ${sheets.map((sheet) => sheet?.id).join(' ')}`,
  bytes: ({ sheets }) => BYTES_PER_ENTRY * (1 + sheets.length),
  isWhole: ({ unread, skipped }) => !unread && skipped.length === 0,
};

/** A sheet of a file, by its place there. */
export interface PlacedSheet {
  readonly file: Answer<ReadFile>;
  readonly ordinal: number;
}

export const stackNode: CacheNode<readonly PlacedSheet[], Stack> = {
  name: 'stack',
  key: (placed) => placed.map(({ file, ordinal }) => `${file.id}#${ordinal}`).join(' '),
  bytes: ({ layers }) => BYTES_PER_ENTRY * (1 + layers.length),
};

/** What is measured between layers: by their measures, so that names and paints make no difference. */
export const seamsNode: CacheNode<
  {
    /** Of `sheetNode`, in painting order. */
    readonly sheets: readonly number[];
    /** Which of them are one painted region. */
    readonly firsts: readonly number[];
    readonly slip: number;
  },
  MeasuredSeams
> = {
  name: 'seams',
  key: ({ sheets, firsts, slip }) => `${slip} ${sheets.join(' ')} ${firsts.join(' ')}`,
  bytes: ({ seams, memory }) =>
    BYTES_PER_ENTRY +
    BYTES_PER_VERTEX * memory.cut.reduce((sum, { cut }) => sum + vertices(cut), 0) +
    BYTES_PER_PART * (seams.overlaps.length + seams.gaps.length),
};

interface CheckInputs {
  readonly check: string;
  readonly file: Answer<ReadFile>;
  readonly measuring: string;
}

/** What a check found that reads one file. */
export const fileCheckNode: CacheNode<CheckInputs, CheckResult> = {
  name: 'file check',
  key: ({ check, file, measuring }) => `${check} ${file.id} ${measuring}`,
  bytes: bytesOfResult,
};

/** What a check found that reads the whole stack, for one of its files. */
export const stackCheckNode: CacheNode<CheckInputs & { readonly stack: Answer<Stack> }, CheckResult> = {
  name: 'stack check',
  key: ({ check, file, stack, measuring }) => `${check} ${file.id} ${stack.id} ${measuring}`,
  bytes: bytesOfResult,
};

/** All findings of a file in the order in which they are told, by all that is in the configuration. */
export const findingsNode: CacheNode<
  { readonly file: Answer<ReadFile>; readonly stack: Answer<Stack>; readonly version: string },
  Found
> = {
  name: 'findings',
  key: ({ file, stack, version }) => `${file.id} ${stack.id} ${version}`,
  bytes: ({ complete }) => BYTES_PER_ENTRY + BYTES_PER_PART * complete.length,
  isWhole: ({ whole }) => whole,
};

/** What was worked out from a report: plans and proofs. */
export const proofNode: CacheNode<{ readonly findings: number; readonly what: string }, unknown> = {
  name: 'proof',
  key: ({ findings, what }) => `${findings} ${what}`,
  bytes: () => BYTES_PER_PROOF,
};

/** Rough, and counted as if no two answers had anything in common. */
const BYTES_PER_UNIT = 4;
const BYTES_PER_SHAPE = 400;
const BYTES_PER_CURVE = 200;
const BYTES_PER_KEY = 8;
const BYTES_PER_VERTEX = 32;
const BYTES_PER_PART = 500;
const BYTES_PER_ENTRY = 500;
const BYTES_PER_PROOF = 20_000;

function vertices(region: Region): number {
  return region.reduce((sum, polygon) => sum + edgesIn(ringsOf(polygon)), 0);
}

function bytesOfResult({ findings }: CheckResult): number {
  return BYTES_PER_ENTRY + BYTES_PER_PART * findings.length;
}
