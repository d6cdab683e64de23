/** Runs a text through reading, planning, cutting and reading again. */
import { parse } from 'svgson';
import { type Config, DEFAULT_CONFIG } from '../../src/config/types';
import { readDrawing } from '../../src/drawing/index';
import { cutStrips, stripsFor } from '../../src/edits/bridge/cut';
import { type Bridge, type PlanOptions, planBridges, type Unbridged } from '../../src/edits/plan/index';
import { polygonOf } from '../../src/edits/strip/strip';
import type { Region } from '../../src/geometry/base/polygon-types';
import { areaOf, difference, intersection, perimeterOf } from '../../src/geometry/boolean/index';
import { parseMarkup } from '../../src/markup/parse';
import { groupShapes } from '../../src/sheet/layer/layers';
import { measureSheet } from '../../src/sheet/measure';
import type { Sheet } from '../../src/sheet/types';
import { applyEdits, type TextEdit } from '../../src/text/text';

export function sheetsOf(text: string, config: Partial<Config> = {}): Sheet[] {
  const whole = { ...DEFAULT_CONFIG, ...config };
  const drawing = readDrawing(parseMarkup(text), {});
  return groupShapes(drawing).map((group) => measureSheet(drawing, group, whole));
}

export function areaOfRegion(region: Region): number {
  return region.reduce((sum, polygon) => sum + areaOf(polygon), 0);
}

export function areaBetween(a: Region, b: Region): number {
  return areaOfRegion(difference(a, b)) + areaOfRegion(difference(b, a));
}

export interface Bridged {
  readonly before: Sheet;
  readonly after: Sheet;
  readonly bridges: readonly Bridge[];
  /** How many islands no place was found for. */
  readonly unbridged: number;
  readonly reasons: readonly Unbridged[];
  readonly edits: readonly TextEdit[];
  readonly text: string;
  /** mm²: by how much the openings afterwards differ from the openings before less the strips. */
  readonly error: number;
  /** The error that flattening curves anew may make, in mm². */
  readonly allowance: number;
  /** mm² of openings that the strips took, as measured and as expected. */
  readonly lost: number;
  readonly expectedLoss: number;
}

/** Bridges all islands of one layer. A refusal is thrown. */
export function bridge(
  text: string,
  options: Partial<PlanOptions> = {},
  config: Partial<Config> = {},
  layer = 0,
): Bridged {
  const before = sheetsOf(text, config)[layer] as Sheet;
  const islands = before.pieces.filter((piece) => piece.island);
  const { bridges, unbridged, reasons } = planBridges(before, islands, { width: 0.8, ...options });
  const cut = cutStrips(before, stripsFor(before, bridges));
  if ('refusal' in cut) throw new Error(cut.refusal);
  const after = applyEdits(text, cut.edits);
  const sheet = sheetsOf(after, config)[layer] as Sheet;
  const strips = stripsFor(before, bridges).map(polygonOf);
  const wanted = difference(before.openings, strips);
  return {
    before,
    after: sheet,
    bridges,
    unbridged: unbridged.length,
    reasons: [...reasons.values()],
    edits: cut.edits,
    text: after,
    error: areaBetween(sheet.openings, wanted),
    allowance: 0.006 * before.openings.reduce((sum, polygon) => sum + perimeterOf(polygon), 0) + 1e-4,
    lost: areaOfRegion(before.openings) - areaOfRegion(sheet.openings),
    expectedLoss: areaOfRegion(intersection(before.openings, strips)),
  };
}

export function islandsOf(sheet: Sheet): number {
  return sheet.pieces.filter((piece) => piece.island).length;
}

/** Whether an independent reader takes the text. */
export async function parsesElsewhere(text: string): Promise<boolean> {
  return (await parse(text)).name === 'svg';
}
