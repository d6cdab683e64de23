/** Puts other courses in place of stretches of a subpath; what lies between them stays as it is. User units. */
import { defined } from '../../../base/defined';
import type { Curve, Point } from '../../../geometry/base/curve-types';
import { subCurve } from '../../../geometry/curve/index';
import type { StepPath } from '../../path/path-model';
import { extraDecimals } from '../../path/precision';
import { cubicsOf } from '../displace-outline';

/** What replaces a subpath from one place to another, in its course. */
export interface Splice {
  /** Index of a step and the parameter on it, added up. */
  readonly from: number;
  readonly to: number;
  /** From the first place to the second. */
  readonly course: readonly Curve[];
}

export interface SplicedPath {
  /** Where the subpath begins from now on; undefined where that stays. */
  readonly start: Point | undefined;
  /** By index of a command, what it becomes. */
  readonly curves: ReadonlyMap<number, Curve[]>;
}

/** @returns undefined where two of them meet, or one goes all round */
export function splicePath({ steps }: StepPath, splices: readonly Splice[]): SplicedPath | undefined {
  const sorted = [...splices].sort((a, b) => a.from - b.from);
  const wrapping = sorted.filter(({ from, to }) => from >= to);
  const [round] = wrapping;
  if (wrapping.length > 1 || (round && round !== sorted.at(-1))) return undefined;
  if (sorted.some(({ to }, i) => to > (sorted[i + 1]?.from ?? Infinity))) return undefined;
  const first = sorted[0];
  if (round && first && first !== round && first.from < round.to) return undefined;
  const curves = new Map<number, Curve[]>();
  const lastCommand = steps.findLast(({ command }) => command !== undefined)?.command;
  const changed = new Set<number>();
  let reached = round?.to ?? 0;
  for (const [i, { curve, command = lastCommand }] of steps.entries()) {
    if (command === undefined) return undefined;
    const own = sorted.filter(({ from }) => from >= i && from < i + 1);
    const parts: Curve[] = [];
    for (const { from, to, course } of own) {
      parts.push(...stretch(curve, Math.max(reached - i, 0), from - i), ...course);
      reached = from >= to ? Infinity : to;
    }
    parts.push(...stretch(curve, Math.max(reached - i, 0), 1));
    if (parts.length !== 1 || parts[0] !== curve) changed.add(command);
    curves.set(command, [...(curves.get(command) ?? []), ...parts]);
  }
  for (const command of [...curves.keys()]) if (!changed.has(command)) curves.delete(command);
  return { start: round && defined(round.course.at(-1)).end, curves };
}

function stretch(curve: Curve, from: number, to: number): Curve[] {
  if (to - from < 1e-9) return [];
  if (from === 0 && to === 1) return [curve];
  const part = subCurve(curve, from, to);
  // The rounded ends of a part of an arc may say too little about where its centre is.
  return part.kind === 'arc' && extraDecimals(part) > 0 ? cubicsOf(part) : [part];
}
