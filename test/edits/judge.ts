/** What must hold after bridging, judged by the engine's own check and by an independent renderer. */

import type { Finding } from '../../src/checks/finding';
import { changedRegion, stripsFor } from '../../src/edits/bridge/cut';
import { depthInStrip, polygonOf, type Strip, widenStrip } from '../../src/edits/strip/strip';
import { bridgeIslands, check, type Piece, type PlannedBridge, type Report, type Sheet } from '../../src/engine/index';
import type { Point } from '../../src/geometry/base/curve-types';
import type { Box, Region } from '../../src/geometry/base/polygon-types';
import { boxContainsBox, distanceToEdge, growBox } from '../../src/geometry/base/ring';
import { dot, interpolate, subtract, vectorLength } from '../../src/geometry/base/vector';
import { boxOfPolygon, difference, intersection, offset } from '../../src/geometry/boolean/index';
import { findThinParts } from '../../src/geometry/thickness/index';
import type { ThinPart } from '../../src/geometry/thickness/types';
import { type Raster, rasterIslands, rasterise } from '../outside/raster';
import { areaOfRegion, islandsOf } from './bridging';

/** mm, the usual limit of bridges. */
const LIMIT = 0.8;
const WIDTH_TOLERANCE = 0.02;
const PIXELS_PER_MM = 6;
/** Bare pieces of fewer pixels are beyond what pixels can tell. */
const TOO_SMALL = 24;
/**
 * Coverage of 255: the renderer flattens the two halves of a curve a little otherwise than the whole, as far as 0.37
 * pixels; it counts coverage in steps of 48, and where a line lies on a fill both are rounded to these.
 */
const SAME_COVERAGE = 128;

export interface Verdict {
  readonly islands: number;
  readonly bridges: number;
  /** Sentences of the engine about what it would not do, but for islands that all that hangs is too far from. */
  readonly refusals: readonly string[];
  /** Islands that all that hangs is too far from, by the distance of each edge to each edge. */
  readonly tooFar: number;
  /** What does not hold, a sentence each. */
  readonly faults: readonly string[];
}

export function judgeBridging(text: string): Verdict {
  const report = check(text);
  const { text: bridged, plan, refusals } = bridgeIslands(report);
  const after = check(bridged);
  const messages = refusals.map(({ message }) => message);
  const islands = report.sheets.reduce((sum, sheet) => sum + islandsOf(sheet), 0);
  const far = messages.filter((message) => message.includes(TOO_FAR));
  const others = messages.filter((message) => !far.includes(message));
  const counted = { islands, bridges: plan.length, refusals: others, tooFar: far.length };
  if (messages.length > 0) return { ...counted, faults: far.flatMap((message) => notFar(report, message)) };
  const strips = report.sheets.map((sheet) =>
    stripsFor(
      sheet,
      plan.filter(({ layer }) => layer === sheet.layer.name),
    ),
  );
  const changed = report.sheets.flatMap((sheet, i) => changedStrips(sheet, strips[i] ?? []));
  // Lines that only show where to cut are of any width: joined ones take that of the first.
  const isSeen = report.sheets.every(({ layer }) => layer.reading !== 'outlines');
  const [before, now] = isSeen ? [text, bridged].map((each) => drawn(each, report.drawing.width)) : [];
  const faults = [
    ...leftIslands(after, now),
    ...wrongLoss(
      report,
      after,
      strips.map((own) => own.map(polygonOf)),
    ),
    ...wrongWidths(after, strips, plan),
    ...newFindings(report, after),
    ...(before && now ? strayPixels(before, now, changed) : []),
    ...(bridgeIslands(after).edits.length > 0 ? ['a second run changes it again'] : []),
  ];
  return { ...counted, faults };
}

/** mm: no bridge is longer (common practice, no source). */
const LONGEST = 20;
const TOO_FAR = 'all that hangs on the sheet is over 20.00 mm away';

/** Whether a chain of bridges could lead from the island that a sentence is about to what hangs, after all. */
function notFar({ sheets }: Report, message: string): string[] {
  const [x = NaN, y = NaN] = (/at (\S+), (\S+) mm/.exec(message) ?? []).slice(1).map(Number);
  return sheets.flatMap(({ pieces }) => {
    const reached = new Set(pieces.filter(({ label }) => Math.hypot(label.x - x, label.y - y) < 0.1));
    for (const one of reached) {
      for (const other of pieces) {
        if (!reached.has(other) && distanceOf(one, other) < LONGEST - 0.02) reached.add(other);
      }
    }
    return [...reached].some(({ island }) => !island) ? [`not so: ${message}`] : [];
  });
}

/** mm between the outlines of two pieces, by all pairs of a corner and an edge. */
function distanceOf(one: Piece, other: Piece): number {
  const edges = [one, other].map(({ polygon: { outer, holes } }) => [outer, ...holes].flatMap(edgesOf));
  const [own = [], others = []] = edges;
  return Math.min(...pairsOf(own, others), ...pairsOf(others, own));
}

type Edge = readonly [number, number, number, number];

function edgesOf(ring: ArrayLike<number>): Edge[] {
  return Array.from({ length: ring.length / 2 }, (_, i) => {
    const at = (k: number): number => ring[k % ring.length] ?? 0;
    return [at(2 * i), at(2 * i + 1), at(2 * i + 2), at(2 * i + 3)];
  });
}

function pairsOf(corners: readonly Edge[], edges: readonly Edge[]): number[] {
  return corners.map(([x, y]) =>
    edges.reduce((least, [ax, ay, bx, by]) => Math.min(least, distanceToEdge(x, y, ax, ay, bx, by)), Infinity),
  );
}

/** As `changedRegion`, still as strips. */
function changedStrips(sheet: Sheet, strips: readonly Strip[]): Strip[] {
  return changedRegion(sheet, strips).map(({ outer }) => {
    const [a, b, c, d] = [0, 2, 4, 6].map((i) => ({ x: outer[i] ?? 0, y: outer[i + 1] ?? 0 }));
    return { corners: [a, b, c, d] as unknown as Strip['corners'] };
  });
}

/** Specks are told apart, to be removed rather than held (0.05 mm²: common practice, no source). */
function isWorthHolding({ island, area }: Piece): boolean {
  return island && area >= 0.05;
}

/** @param width of the drawing, mm */
const drawn = (text: string, width: number): Raster => rasterise(text, Math.round(width * PIXELS_PER_MM));

function leftIslands({ sheets }: Report, picture: Raster | undefined): string[] {
  const ours = sheets.reduce((sum, { pieces }) => sum + pieces.filter(isWorthHolding).length, 0);
  const [only, ...others] = sheets;
  const looksBare = picture && others.length === 0 && only?.layer.reading === 'openings';
  const seen = looksBare ? rasterIslands(picture) : [];
  const clear = seen.filter(({ pixels, clearest }) => pixels >= TOO_SMALL && clearest > 0.9);
  return [
    ...(ours > 0 ? [`${ours} islands left`] : []),
    ...(clear.length > 0 ? [`the renderer sees ${clear.length} islands`] : []),
  ];
}

/** Whether openings end where lines do, which are cut square or capped, not along the strip: a slanted bridge comes out wider. */
function endsOfLines({ layer: { reading, shapes } }: Sheet): boolean {
  return reading === 'openings' && shapes.some(({ part }) => part === 'stroke');
}

function wrongLoss(before: Report, after: Report, strips: readonly Region[]): string[] {
  return before.sheets.flatMap((sheet, i) => {
    const now = after.sheets[i];
    if (!now || endsOfLines(sheet)) return [];
    const lost = areaOfRegion(sheet.openings) - areaOfRegion(now.openings);
    const expected = areaOfRegion(intersection(sheet.openings, strips[i] ?? []));
    const wrong = Math.abs(lost - expected);
    return wrong > 0.02 * expected + 1e-3 ? [`took ${lost.toFixed(3)} mm² for ${expected.toFixed(3)}`] : [];
  });
}

/** Necks that lie on a bridge's strip and across it are that bridge; an island may be a sliver itself. */
function wrongWidths(
  { sheets }: Report,
  strips: readonly (readonly Strip[])[],
  plan: readonly PlannedBridge[],
): string[] {
  return sheets.flatMap((sheet, i) => {
    const own = plan.filter(({ layer }) => layer === sheet.layer.name);
    const widest = Math.max(LIMIT, ...own.map(({ cutWidth }) => cutWidth));
    const allNecks = findThinParts(sheet.material, widest + 0.1).filter(({ kind }) => kind === 'neck');
    return (strips[i] ?? []).flatMap((strip, number) => {
      const wanted = own[number]?.cutWidth ?? LIMIT;
      const necks = allNecks.filter(({ width }) => width < wanted + 0.1);
      const grown = widenStrip(strip, 0.05);
      const across = necks.filter(
        (neck) => depthInStrip(grown, interpolate(neck.from, neck.to, 0.5)) > 0 && liesAcross(neck, strip),
      );
      const widths = across.map(({ width }) => width);
      const least = Math.min(...widths);
      // None: beside other material it is part of a wider place.
      const most = endsOfLines(sheet) ? Infinity : wanted + WIDTH_TOLERANCE;
      const right = widths.length === 0 || (least >= wanted - WIDTH_TOLERANCE && least <= most);
      return right ? [] : [`a bridge of ${wanted.toFixed(2)} mm measures ${least.toFixed(3)} mm`];
    });
  });
}

function liesAcross({ from, to }: ThinPart, { corners: [start, end] }: Strip): boolean {
  const [across, along] = [subtract(to, from), subtract(end, start)];
  return Math.abs(dot(across, along)) < 0.7 * vectorLength(across) * vectorLength(along);
}

function newFindings(before: Report, after: Report): string[] {
  // Nothing as bad as an island that falls out: a tongue that lifts is a warning.
  const count = ({ complete }: Report, wanted: string): number =>
    complete
      .filter(({ check: id, severity }) => id === wanted && severity !== 'info' && severity !== 'hint')
      .reduce((sum, finding) => sum + placesOf(finding), 0);
  const ids = new Set(after.complete.map(({ check: id }) => id));
  const harmless = ['edge-opening', 'loose-tongue'];
  const isParted = (id: string) => THIN.has(id) && newThinPlaces(before, after, id).length === 0;
  const more = [...ids].filter((id) => !harmless.includes(id) && count(after, id) > count(before, id) && !isParted(id));
  return more.map((id) => `a new ${id}`);
}

/** Many narrow places of one opening are one finding. */
function placesOf({ subject }: Finding): number {
  return subject?.kind === 'thin' ? (subject.apart?.length ?? 1) : 1;
}

const THIN = new Set(['narrow-opening', 'small-opening', 'thin-bridge']);
/** mm: how far a thin place may be told from where it was thin before, and how far what is thin may reach beyond. */
const NEAR = 0.35;
const BESIDE = 0.1;
/** mm²: more than the corner of a bridge makes thin. */
const CORNER = 0.03;

/** What is told of thin places where, by offsets, all was wide enough: one that a bridge parts was thin before. */
function newThinPlaces(before: Report, after: Report, checkId: string): Finding[] {
  const thinOf = ({ openings, material }: Sheet, limit: number) =>
    withoutWide(checkId === 'thin-bridge' ? material : openings, limit);
  return after.complete.filter(({ check: id, layerId, at, measure }) => {
    if (id !== checkId || !at) return false;
    const [old, now] = [before, after].map(({ sheets }) => sheets.find(({ layer }) => layer.id === layerId));
    if (!old || !now) return true;
    const limit = measure?.limit ?? 0;
    const spot = thinOf(now, limit).filter((polygon) =>
      boxContainsBox(growBox(boxOfPolygon(polygon), NEAR), boxAt(at)),
    );
    return areaOfRegion(difference(spot, offset(thinOf(old, limit), BESIDE))) > CORNER;
  });
}

const boxAt = ({ x, y }: Point): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

/** What no disc as wide as the limit covers. */
function withoutWide(region: Region, limit: number): Region {
  return difference(region, offset(offset(region, -limit / 2, 'round'), limit / 2, 'round'));
}

/** Pixels that differ farther than one pixel from all that may change. */
function strayPixels(old: Raster, now: Raster, changed: readonly Strip[]): string[] {
  const reach = 1.5 / PIXELS_PER_MM;
  let stray = 0;
  now.coverage.forEach((value, i) => {
    if (Math.abs(value - (old.coverage[i] ?? 0)) <= SAME_COVERAGE) return;
    const point = { x: ((i % now.width) + 0.5) / PIXELS_PER_MM, y: (Math.floor(i / now.width) + 0.5) / PIXELS_PER_MM };
    if (!changed.some((strip) => depthInStrip(strip, point) > -reach)) stray += 1;
  });
  return stray > 0 ? [`${stray} pixels differ elsewhere`] : [];
}
