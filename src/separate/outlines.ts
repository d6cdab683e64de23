/** From areas to outlines in millimetres: what each sheet is cut along. */
import { defined } from '../base/defined';
import type { Cubic, Line, Point } from '../geometry/base/curve-types';
import type { CornerRule } from './curve/corners';
import type { Curves } from './curve/fit-arc';
import { type FitRule, Fits } from './curve/fits';
import { Ranks } from './layers/ranks';
import { type LayerShapes, shapesOf } from './layers/shapes';
import { type SpreadLayer, spreadLayers, UNDER_LATER } from './layers/spread';
import { type Arc, MapTracer } from './map/planar-map';
import type { ArcUse } from './map/rings';
import type { SoftLabels } from './raster';

/** A connected opening: its outline first or not, and those of what stays in it. Each curve starts where the last ended. */
export type Shape = readonly Curves[];

export interface DrawnLayer {
  readonly label: number;
  readonly shapes: readonly Shape[];
  /** Pieces of its sheet that nothing holds. */
  readonly islands: number;
}

/** All lengths in mm. */
export interface DrawingRule {
  /** Of a pixel. */
  readonly pitch: number;
  readonly tolerance: number;
  readonly slip: number;
  /** The least widths of sheet and of openings. */
  readonly bridge: number;
  readonly opening: number;
  /** Whether the corners of borders are kept as sharp as in a drawing. */
  readonly isDrawing: boolean;
}

const DRAWN_CORNERS: CornerRule = { reach: 4.5, skip: 0.8, angle: 35, residual: 0.22, farthest: 4 };
const PHOTO_CORNERS: CornerRule = { reach: 8, skip: 1, angle: 65, residual: 0.35, farthest: 4 };

/** Pixels: nobody sees how a border runs under later paint, and pixels give it steps. */
const HIDDEN_TOLERANCE = 1;

/** mm and pixels that are added to the slip, for what curves under later paint may lose of it. */
const SPARE_MM = 0.05;
const SPARE_PIXELS = HIDDEN_TOLERANCE + 0.7;

interface LayerMap extends LayerShapes {
  readonly label: number;
  readonly arcs: readonly Arc[];
}

/** @param order labels, first sprayed first */
export function drawLayers(
  soft: SoftLabels,
  order: readonly number[],
  rule: DrawingRule,
): { readonly layers: DrawnLayer[]; readonly nodes: number } {
  const shown: FitRule = {
    tolerance: rule.tolerance / rule.pitch,
    corners: rule.isDrawing ? DRAWN_CORNERS : PHOTO_CORNERS,
  };
  const hidden: FitRule = { tolerance: Math.max(HIDDEN_TOLERANCE, shown.tolerance), corners: undefined };
  const ruleOf = (arc: Arc): FitRule => (arc.left === UNDER_LATER || arc.right === UNDER_LATER ? hidden : shown);
  const fits = new Fits();
  const tracer = new MapTracer(soft);
  fits.part(tracer.whole.arcs, ruleOf);
  const { nodes } = fits;
  const ranks = new Ranks(order);
  const maps: LayerMap[] = [];
  for (const layer of spreadLayers(soft, ranks, sizesOf(rule))) maps.push(mapOf(layer, ranks, tracer));
  // A border that is drawn better for one layer is drawn so for all, and is looked at again in each.
  const outlines = maps.map(outlinesOf);
  while (outlines.map((arcs) => fits.part(arcs, ruleOf)).some(Boolean));
  const curvesOf = (arc: Arc): Curves => fits.curvesOf(arc, ruleOf(arc));
  return { layers: maps.map((map) => drawn(map, curvesOf, rule.pitch)), nodes };
}

function sizesOf({ slip, bridge, opening, pitch }: DrawingRule) {
  return {
    slip: slip > 0 ? (slip + SPARE_MM) / pitch + SPARE_PIXELS : 0,
    bridge: bridge / pitch + 2 * HIDDEN_TOLERANCE,
    opening: opening / pitch + 2 * HIDDEN_TOLERANCE,
  };
}

function mapOf({ label, rank, under }: SpreadLayer, ranks: Ranks, tracer: MapTracer): LayerMap {
  const isInside = (region: number): boolean => region === label || region === UNDER_LATER;
  const isShown = (region: number): boolean => ranks.of(region) < rank;
  return tracer.withRegion(UNDER_LATER, under, isInside, (map) => ({
    label,
    arcs: map.arcs,
    ...shapesOf(map, isInside, isShown),
  }));
}

/** The arcs of a layer's outlines. */
function outlinesOf({ arcs, shapes }: LayerMap): Arc[] {
  const used = new Set(shapes.flatMap((shape) => shape.flatMap((ring) => ring.map(({ arc }) => arc))));
  return [...used].map((arc) => defined(arcs[arc]));
}

function drawn({ label, arcs, shapes, islands }: LayerMap, curvesOf: (arc: Arc) => Curves, pitch: number): DrawnLayer {
  const curvesOfRing = (ring: readonly ArcUse[]): Curves =>
    ring.flatMap((use) => curvesOfUse(arcs, use, curvesOf)).map((curve) => scaled(curve, pitch));
  return { label, shapes: shapes.map((shape) => shape.map(curvesOfRing)), islands };
}

function curvesOfUse(arcs: readonly Arc[], { arc, reversed }: ArcUse, curvesOf: (arc: Arc) => Curves): Curves {
  const curves = curvesOf(defined(arcs[arc]));
  return reversed ? curves.toReversed().map(reverse) : curves;
}

function reverse(curve: Line | Cubic): Line | Cubic {
  const { start: end, end: start } = curve;
  return curve.kind === 'line'
    ? { kind: 'line', start, end }
    : { kind: 'cubic', start, control1: curve.control2, control2: curve.control1, end };
}

function scaled(curve: Line | Cubic, by: number): Line | Cubic {
  const at = ({ x, y }: Point): Point => ({ x: x * by, y: y * by });
  const ends = { start: at(curve.start), end: at(curve.end) };
  return curve.kind === 'line'
    ? { kind: 'line', ...ends }
    : { kind: 'cubic', ...ends, control1: at(curve.control1), control2: at(curve.control2) };
}
