/**
 * What must hold of two sheets that cover each other's bridges, judged without the engine: curves read by svgpath, regions
 * by clipper-lib, distances by jsts.
 */
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { bridgeAsTwoLayers, check, type PlannedBridge } from '../../src/engine/index';
import { areaOf, grown, type Point, piecesIn, type Rings, shifted, united, without } from './clipper';
import { ringsOfPath } from './flat-path';

/** Icons of paths alone, drawn on 24 × 24 units, nonzero. */
const UNITS = 24;
/** mm */
const SLIP = 0.5;
const DIRECTIONS = 36;
/** mm: icons are drawn up to the edge, so their sheets have a rim. */
const MARGIN = 5;
/** mm: edits write coordinates to a micrometre, and a curve that is parted is written anew in both halves. */
const WRITTEN = 0.001;
/** For each curve: of a quarter circle of 50 mm, chords are off by 1 µm. */
const CHORDS = 120;

export interface Verdict {
  readonly islands: number;
  /** Sentences of the engine about what it would not do. */
  readonly refusals: readonly string[];
  /** What does not hold, a sentence each. */
  readonly faults: readonly string[];
  /** By what share the area that both paint, as planned, is not the area that was to be painted. */
  readonly off: number;
}

/** @param size mm, of the icon's frame */
export function judgeTwoSheets(icon: string, size: number): Verdict {
  const text = icon.replace('<svg ', `<svg data-tombolo-reading="openings" width="${size}mm" height="${size}mm" `);
  const settings = { config: { ...DEFAULT_CONFIG, margin: MARGIN } };
  const report = check(text, settings);
  const islands = report.sheets.flatMap(({ pieces }) => pieces).filter(({ island }) => island).length;
  const outcome = bridgeAsTwoLayers(report);
  if (islands === 0 || outcome.refusals.length > 0) return { islands, refusals: outcome.refusals, faults: [], off: 0 };
  const told = check(outcome.text, settings).complete.filter(({ check: id }) => id === 'near-bridge');
  const [whole, first, second] = [text, ...sheetsIn(outcome.text)].map((each) => openingsIn(each, size / UNITS));
  if (!whole || !first || !second) return { islands, refusals: [], faults: ['there are no two sheets'], off: 0 };
  const faults = [
    ...told.map(({ message }) => message),
    ...paintedOtherwise(whole, united(first, second)),
    ...[first, second].flatMap((openings, i) => looseIn(openings, size, i)),
    ...bareWhenSlipped(whole, first, second),
    ...tooNear(without(whole, first), without(whole, second)),
  ];
  const [layer] = outcome.layers;
  const off = layer ? offBy(whole, layer.first, layer.second) : 1;
  return { islands, refusals: [], faults, off };
}

/** The text of the two groups. */
function sheetsIn(text: string): string[] {
  const groups = [...text.matchAll(/<g id="(?:first|second)-sheet"[^>]*>(.*?)<\/g>/gs)].map(([, inner]) => inner ?? '');
  return groups.length === 2 ? groups : [];
}

function openingsIn(text: string, scale: number): Rings {
  const data = [...text.matchAll(/ d="([^"]+)"/g)].map(([, each]) => each ?? '');
  return united(data.flatMap((each) => united(ringsOfPath(each, scale, CHORDS))));
}

/** Within a micrometre all along, as written; as planned it is the same to the last digit: see `off`. */
function paintedOtherwise(whole: Rings, both: Rings): string[] {
  const stray = areaOf(without(both, whole)) + areaOf(without(whole, both));
  return stray > WRITTEN * lengthOf(whole) ? [`both paint ${stray.toFixed(4)} mm² otherwise`] : [];
}

function lengthOf(rings: Rings): number {
  return rings.reduce((sum, ring) => sum + ring.reduce((own, at, i) => own + stepTo(at, ring.at(i - 1) ?? at), 0), 0);
}

function stepTo([x, y]: Point, [fromX, fromY]: Point): number {
  return Math.hypot(x - fromX, y - fromY);
}

function offBy(whole: Rings, first: readonly PlannedBridge[], second: readonly PlannedBridge[]): number {
  const ground = (bridges: readonly PlannedBridge[]): Rings =>
    bridges.map(({ strip }) => strip.corners.map(({ x, y }): Point => [x, y]));
  const both = united(without(whole, ground(first)), without(whole, ground(second)));
  return Math.abs(areaOf(both) / areaOf(whole) - 1);
}

/** The sheet as one piece; what is left of corners that meet in a point is no piece. */
function looseIn(openings: Rings, size: number, sheet: number): string[] {
  const [from, to] = [-MARGIN, size + MARGIN];
  const frame: readonly Point[] = [
    [from, from],
    [to, from],
    [to, to],
    [from, to],
  ];
  const pieces = piecesIn(grown(without([frame], openings), -WRITTEN));
  return pieces === 1 ? [] : [`sheet ${sheet + 1} falls into ${pieces} pieces`];
}

/** Farther inside than the slip, where every print in register has its outline, nothing may lie bare. */
function bareWhenSlipped(whole: Rings, first: Rings, second: Rings): string[] {
  const inside = grown(whole, -SLIP - 2 * WRITTEN);
  return Array.from({ length: DIRECTIONS }, (_, i) => {
    const angle = (i / DIRECTIONS) * 2 * Math.PI;
    const there = shifted(second, SLIP * Math.cos(angle), SLIP * Math.sin(angle));
    return areaOf(without(inside, united(first, there)));
  }).flatMap((bare, i) => (bare > 0 ? [`${bare.toFixed(5)} mm² are bare after a slip to ${10 * i}°`] : []));
}

function tooNear(one: Rings, other: Rings): string[] {
  const [a, b] = [one, other].map((bridges) => polygonsOf(grown(grown(bridges, -2 * WRITTEN), 2 * WRITTEN)));
  const apart = DistanceOp.distance(a as object, b as object);
  return apart >= SLIP ? [] : [`bridges are ${apart.toFixed(4)} mm apart`];
}

/** Bridges have no holes. */
function polygonsOf(rings: Rings): object {
  const factory = new GeometryFactory();
  const polygons = rings.map((ring) => {
    const places = ring.map(([x, y]) => new Coordinate(x, y));
    return factory.createPolygon(factory.createLinearRing([...places, places[0]]), []);
  });
  return factory.createMultiPolygon(polygons);
}
