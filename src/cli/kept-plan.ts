/** Plans of bridges as files: what `tombolo bridge --plan` gives and `--with` takes. */
import type { IslandName, KeptBridge } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import { Failure } from './failure';
import { readPlainFile } from './files/read-input';
import { tidy } from './format/tidy';

/** What names an island, beside its place. Boxes are minX, minY, maxX, maxY in sheet mm. */
export function plainName({ id, ordinal, element, box }: IslandName): object {
  return { ...(id !== undefined && { id }), ordinal, element: element.map(tidy), box: box.map(tidy) };
}

/** @throws Failure when the file is not there or is no plan whose islands have names */
export async function readPlan(path: string): Promise<KeptBridge[]> {
  const { text } = await readPlainFile(path);
  const { version, bridges } = parsed(path, text);
  if (version !== 1 || !Array.isArray(bridges)) throw noPlan(path);
  return bridges.map((bridge) => {
    const kept = keptBridge(bridge as Fields);
    if (!kept) throw noPlan(path);
    return kept;
  });
}

type Fields = Readonly<Record<string, unknown>>;

function parsed(path: string, text: string): Fields {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? (value as Fields) : {};
  } catch (error) {
    throw noPlan(path, error);
  }
}

function noPlan(path: string, cause?: unknown): Failure {
  return new Failure(`${path}: is no plan of bridges; tombolo bridge --plan gives one`, { cause });
}

function keptBridge({ layer, island, from, to, width }: Fields): KeptBridge | undefined {
  const { id, ordinal, element, box } = (island ?? {}) as Fields;
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
  const { x, y } = (value ?? {}) as Fields;
  return isNumber(x) && isNumber(y);
}
