/** `tombolo bridge --at`: one bridge at one place, put in or changed. */
import {
  type BridgeChange,
  bridgeAt,
  bridgeStandingAt,
  changeBridge,
  type Fix,
  type Report,
  type Sheet,
} from '../engine/index';
import { tidy, tidyPoint } from '../format/tidy';
import type { Point } from '../geometry/base/curve-types';
import { isRefusal, type Result, refuse } from '../report/refusal';
import type { BridgePreview } from '../report/report';
import { Failure } from './failure';

/** What is asked for; places in sheet mm. */
export interface PlaceOptions {
  readonly at: Point;
  readonly layer?: string;
  /** mm as cut */
  readonly width?: number;
  readonly moveTo?: Point;
  readonly remove?: boolean;
}

/**
 * The first layer that has a bridge there, or a gap for one, is meant.
 * @param name of the file, for messages
 * @returns why nothing can be done there, where nothing can
 * @throws Failure where a bridge is there and nothing is said about it, or none is there and something is
 */
export function fixAtPlace(report: Report, name: string, options: PlaceOptions): Result<Fix> {
  const sheets = report.sheets.filter(({ layer }) => options.layer === undefined || layer.name === options.layer);
  for (const sheet of sheets) {
    const bridge = bridgeStandingAt(report, sheet, options.at);
    if (bridge) return changeBridge(report, sheet, bridge, changeFrom(name, options));
  }
  if (options.moveTo || options.remove) throw new Failure(`${name}: no bridge is at ${named(options.at)}`);
  return firstDone(sheets, (sheet) => bridgeAt(report, sheet, options.at, options.width));
}

function changeFrom(name: string, { at, width, moveTo, remove }: PlaceOptions): BridgeChange {
  if (remove) return { kind: 'remove' };
  if (moveTo) return { kind: 'move', to: moveTo };
  if (width !== undefined) return { kind: 'width', width };
  throw new Failure(`${name}: a bridge is at ${named(at)} already; say --bridge, --move-to or --remove`);
}

function firstDone(sheets: readonly Sheet[], attempt: (sheet: Sheet) => Result<Fix>): Result<Fix> {
  let first: Result<Fix> | undefined;
  for (const sheet of sheets) {
    const result = attempt(sheet);
    if (!isRefusal(result)) return result;
    first ??= result;
  }
  return first ?? refuse('The drawing has no layers.');
}

function named({ x, y }: Point): string {
  return `${x},${y} mm`;
}

/** Places in sheet mm. */
export function plainBridgePreview({ layer, from, to, width, length, shown }: BridgePreview): object {
  return {
    layer,
    from: tidyPoint(from),
    to: tidyPoint(to),
    width: tidy(width),
    length: tidy(length),
    shown: tidy(shown),
  };
}
