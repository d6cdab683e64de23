/** The bridges of a plan where they stand now: as they were planned, or where they were moved; each move is taken back alone. */
import type { BridgePreviewData } from '../../protocol/index';
import type { MovedInPlan, PlanGhost } from '../../protocol/layer-plan';

/** By their numbers in the plan: those that stand elsewhere than they were planned. */
type Places = ReadonlyMap<number, BridgePreviewData>;

export class PlannedBridges {
  private planned: readonly BridgePreviewData[] = [];
  private places: Places = new Map();
  private past: readonly Places[] = [];
  private future: readonly Places[] = [];

  /** Another plan: nothing of it is moved, and nothing can be taken back. */
  begin(planned: readonly BridgePreviewData[]): void {
    this.planned = planned;
    this.places = new Map();
    [this.past, this.future] = [[], []];
  }

  /** In the order of their numbers. */
  get all(): readonly BridgePreviewData[] {
    return this.planned.map((bridge, number) => this.places.get(number) ?? bridge);
  }

  get moved(): readonly MovedInPlan[] {
    return [...this.places].map(([bridge, { from, to }]) => ({ bridge, from, to }));
  }

  /** All that goes to another place at once: one step. */
  move(ghosts: PlanGhost['ghosts']): void {
    this.step(new Map([...this.places, ...ghosts.map(({ bridge, preview }) => [bridge, preview] as const)]));
  }

  /** Puts all back where they were planned; a step like any other. @returns whether anything was elsewhere */
  reset(): boolean {
    if (this.places.size === 0) return false;
    this.step(new Map());
    return true;
  }

  /** @param again does again what was taken back last. @returns whether there was a step */
  takeBack(again: boolean): boolean {
    const places = (again ? this.future : this.past).at(-1);
    if (!places) return false;
    if (again) [this.past, this.future] = [[...this.past, this.places], this.future.slice(0, -1)];
    else [this.past, this.future] = [this.past.slice(0, -1), [...this.future, this.places]];
    this.places = places;
    return true;
  }

  private step(places: Places): void {
    [this.past, this.future] = [[...this.past, this.places], []];
    this.places = places;
  }
}
