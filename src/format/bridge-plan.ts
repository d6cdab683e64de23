/** Plans of bridges as JSON: what `tombolo bridge --plan` gives and `--with` takes. */
import type { PlannedBridge } from '../engine/fixes/bridge-islands';
import { type IslandName, type KeptBridge, keptBridgeOf } from '../engine/fixes/kept/index';
import type { Point } from '../geometry/base/curve-types';
import type { Report } from '../report/report';
import { tidy, tidyPoint } from './tidy';

/** A bridge of a plan. Places are sheet mm. */
export interface PlainBridge {
  /** The layer's name. */
  readonly layer: string;
  /** A point of what it holds, its area in mm², and by what the next build knows it again. */
  readonly island: { readonly at: Point; readonly area: number } & Partial<Omit<IslandName, 'layer'>>;
  readonly from: Point;
  readonly to: Point;
  /** mm, as cut */
  readonly width: number;
  /** mm */
  readonly length: number;
  /** Which share of it later layers leave to be seen, 0 to 1. */
  readonly shown: number;
}

/** Places in sheet mm; the island by a point of it, and by what names it in the next build. */
export function plainBridge(report: Report, bridge: PlannedBridge): PlainBridge {
  const { layer, from, to, cutWidth, length, hiddenShare, island } = bridge;
  const kept = keptBridgeOf(report, bridge);
  return {
    layer,
    island: { at: tidiedPoint(island.label), area: tidy(island.area), ...(kept && plainName(kept.island)) },
    from: tidiedPoint(from),
    to: tidiedPoint(to),
    width: tidy(cutWidth),
    length: tidy(length),
    shown: tidy(hiddenShare === undefined ? 1 : 1 - hiddenShare),
  };
}

const tidiedPoint = (point: Point): Point => tidyPoint(point) ?? point;

/** What names an island, beside its place. Boxes are minX, minY, maxX, maxY in sheet mm. */
function plainName({ id, ordinal, element, box }: IslandName): Partial<Omit<IslandName, 'layer'>> {
  return { ...(id !== undefined && { id }), ordinal, element: element.map(tidy), box: box.map(tidy) };
}

/** The bridges of a plan; undefined where it is none whose islands have names. */
export function keptBridges(plan: unknown): KeptBridge[] | undefined {
  const { version, bridges } = fieldsOf(plan);
  if (version !== 1 || !Array.isArray(bridges)) return undefined;
  const kept = bridges.map((bridge) => keptBridge(fieldsOf(bridge)));
  return kept.every((bridge) => bridge !== undefined) ? kept : undefined;
}

type Fields = Readonly<Record<string, unknown>>;

function fieldsOf(value: unknown): Fields {
  return typeof value === 'object' && value !== null ? (value as Fields) : {};
}

function keptBridge({ layer, island, from, to, width }: Fields): KeptBridge | undefined {
  const { id, ordinal, element, box } = fieldsOf(island);
  if (typeof layer !== 'string' || typeof ordinal !== 'number' || !isBox(element) || !isBox(box)) return undefined;
  if (!isPoint(from) || !isPoint(to) || !isNumber(width) || width <= 0) return undefined;
  return { island: { layer, ...(typeof id === 'string' && { id }), ordinal, element, box }, from, to, width };
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function isBox(value: unknown): value is readonly number[] {
  return Array.isArray(value) && value.length === 4 && value.every(isNumber);
}

function isPoint(value: unknown): value is Point {
  const { x, y } = fieldsOf(value);
  return isNumber(x) && isNumber(y);
}
