/** Layers that are sprayed right after each other, in whatever order all are. Sets are bit masks. */
import { defined } from '../../base/defined';

/** What is moved as one: a layer, or sheets of one painted region that follow each other. Numbers of layers, ascending. */
export type SprayUnit = readonly number[];

/** @param firsts for each layer the first of those that are one painted region with it */
export function sprayUnits(firsts: readonly number[]): SprayUnit[] {
  const units: number[][] = [];
  firsts.forEach((first, layer) => {
    const last = units.at(-1);
    if (last && firsts[defined(last[0])] === first) last.push(layer);
    else units.push([layer]);
  });
  return units;
}

/** The layers of a set of units. */
export function layersIn(units: readonly SprayUnit[], set: number): number {
  return units.reduce((all, layers, unit) => ((set & (1 << unit)) === 0 ? all : all | setOf(layers)), 0);
}

/** The units that have a layer of a set. */
export function unitsWith(units: readonly SprayUnit[], set: number): number {
  return units.reduce((all, layers, unit) => ((set & setOf(layers)) === 0 ? all : all | (1 << unit)), 0);
}

function setOf(layers: SprayUnit): number {
  return layers.reduce((set, layer) => set | (1 << layer), 0);
}
