/** What is needed while spraying, as plain data: the page that hangs at the wall is made of it. */
import { type Config, DEFAULT_CONFIG } from '../../config/types';
import { count } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import type { Box, Polygon, Region } from '../../geometry/base/polygon-types';
import { joinBoxes } from '../../geometry/base/ring';
import { areaOf } from '../../geometry/boolean/index';
import type { Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import { registrationMarks } from '../../stack/registration-marks';
import { oneLine } from '../../text/plain-text';
import { type LoosePiece, loosePieces } from '../loose-pieces';
import { motionOf, sheetTime } from '../sheet-time';
import type { CutSheet } from '../types';

export interface Job {
  readonly title: string;
  /** The sheet's rectangle, in sheet mm. */
  readonly frame: Box;
  readonly ground: string;
  readonly layers: readonly JobLayer[];
  readonly pieces: readonly NumberedPiece[];
  /** Where those lie on each sheet that has some. */
  readonly positions: readonly Positions[];
  /** What the artist accepts, with the reason. */
  readonly accepted: readonly string[];
  readonly notes: readonly string[];
}

export interface JobLayer {
  /** From 1, in painting order. */
  readonly number: number;
  readonly name: string;
  /** `#rrggbb` */
  readonly paint: string;
  readonly openings: Region;
  /** cm² that are painted. */
  readonly area: number;
  /** mm */
  readonly cutLength: number;
  /** Seconds; undefined where the machine is not described. */
  readonly cutTime: number | undefined;
  readonly coats: number;
  /** As the artist says it. */
  readonly wait: string | undefined;
  /** Of a can; undefined where the artist states no coverage. */
  readonly cans: number | undefined;
  readonly marks: number;
}

/** A loose piece that is kept: laid by hand where it belongs. */
export interface NumberedPiece {
  /** "2.1": the first of sheet 2. */
  readonly label: string;
  readonly at: Point;
}

/** A drawing of one sheet that shows where its loose pieces are laid. */
export interface Positions {
  readonly number: number;
  readonly name: string;
  /** The sheet's rectangle, in sheet mm. */
  readonly frame: Box;
  readonly openings: Region;
  readonly pieces: readonly (NumberedPiece & { readonly outline: Polygon })[];
}

/** Where a loose piece's number stands: beside it, so that it is seen itself. In sizes of the letters. */
export const BESIDE = { x: 1.6, y: -1.4 } as const;

const WHITE = '#ffffff';

/**
 * @param sheets the same layers as they are cut
 * @param texts of all the files that the stack is cut from: they hold what is accepted
 */
export function jobOf(report: Report, sheets: readonly CutSheet[], title: string, texts: readonly string[]): Job {
  const config = report.settings.config ?? DEFAULT_CONFIG;
  const { layers } = report.stack;
  const { kept, others } = loosePieces(report);
  return {
    title: oneLine(title),
    frame: joinBoxes(layers.map(({ sheet }) => sheet.frame)),
    ground: config.ground ?? WHITE,
    layers: layers.map(({ sheet }, i) => jobLayer(sheet, sheets[i], i + 1, config)),
    pieces: kept.map(({ label, piece }) => ({ label, at: piece.label })),
    positions: layers.flatMap(({ sheet }, i) => positionsOf(sheet, i, kept)),
    accepted: acceptedIn(texts, config),
    notes: [...lostNote(others), ...cautionsFor(report, config)],
  };
}

function positionsOf(sheet: Sheet, layer: number, kept: readonly LoosePiece[]): Positions[] {
  const own = kept.filter((each) => each.layer === layer);
  if (own.length === 0) return [];
  const pieces = own.map(({ label, piece }) => ({ label, at: piece.label, outline: piece.polygon }));
  const { frame, openings } = sheet;
  return [{ number: layer + 1, name: oneLine(sheet.layer.name), frame, openings, pieces }];
}

function lostNote(others: number): string[] {
  if (others === 0) return [];
  return [
    `${count(others, 'piece')} fall${others === 1 ? 's' : ''} out of the sheets and ${others === 1 ? 'is' : 'are'} not kept: see the findings.`,
  ];
}

function jobLayer(sheet: Sheet, cut: CutSheet | undefined, number: number, config: Config): JobLayer {
  const { layer, openings } = sheet;
  const own = Object.hasOwn(config.paint.layers, layer.name) ? config.paint.layers[layer.name] : undefined;
  const steps = { ...config.paint, ...own };
  const motion = motionOf(config);
  const area = areaOf(openings) / 100;
  const coats = steps.coats ?? 1;
  const { coverage } = config.paint;
  return {
    number,
    name: oneLine(layer.name),
    paint: layer.paint,
    openings,
    area,
    coats,
    wait: steps.wait === undefined ? undefined : oneLine(steps.wait),
    cutLength: cut?.contours.reduce((sum, { length }) => sum + length, 0) ?? sheet.cutLength,
    cutTime: cut && motion ? sheetTime(cut, motion) : undefined,
    // 10,000 cm² are a square metre.
    cans: coverage === undefined ? undefined : (area / 10_000) * (coats / coverage),
    marks: registrationMarks(layer).length,
  };
}

const ACCEPTANCE = /<!--\s*tombolo accept ([a-z-]+):\s*([\s\S]*?)\s*-->/g;

const ATTRIBUTE = /\bdata-tombolo-accept\s*=\s*(["'])\s*([a-z-]+):\s*(.*?)\s*\1/gs;

function acceptedIn(texts: readonly string[], { accept, acceptedIn: inParts }: Config): string[] {
  const own = texts.flatMap((text) => [...text.matchAll(ACCEPTANCE)].map(([, check, reason]) => `${check}: ${reason}`));
  const marked = texts.flatMap((text) =>
    [...text.matchAll(ATTRIBUTE)].map(([, , check, reason]) => `${check}: ${reason}`),
  );
  const parts = inParts.map(({ check, reason }) => `${check}: ${reason}`);
  const everywhere = Object.entries(accept).map(([check, reason]) => `${check}: ${reason}`);
  return [...everywhere, ...parts, ...own, ...marked].map(oneLine);
}

function cautionsFor({ complete }: Report, { tool }: Config): string[] {
  const material = complete.filter(({ check }) => check === 'unsafe-material').map(({ message }) => oneLine(message));
  const cutting =
    tool === 'laser'
      ? "Laser: never leave it running unattended; extraction on, fire extinguisher at hand. The machine's manual, your workshop's rules and local codes come first."
      : 'Knife: cut away from your hand, on a mat, with a sharp blade.';
  return [
    ...material,
    cutting,
    "Spray paint: outdoors or with real extraction, away from sparks and flames, with a respirator for organic vapours and gloves. Read the can's safety sheet, and get leave before you paint on what is not yours.",
  ];
}
