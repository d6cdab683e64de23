/** The hand on the picture: while the bridges of a layer are planned it is the plan's, else that of the tool. */
import type { Point } from '../../geometry/base/curve-types';
import type { KeyPress } from '../tools/bridge-gestures';
import type { Hand } from '../tools/hand';
import type { LayerPlanner } from './layer-planner';

export class PlanFirst implements Hand {
  private readonly planner: LayerPlanner;
  private readonly tools: Hand;

  constructor(planner: LayerPlanner, tools: Hand) {
    this.planner = planner;
    this.tools = tools;
  }

  private get gestures(): LayerPlanner['gestures'] | undefined {
    return this.planner.active ? this.planner.gestures : undefined;
  }

  /** Alt holds bridges of a plan apart; elsewhere it shifts sheets. */
  grip(at: Point, alt: boolean): boolean {
    return this.gestures ? this.gestures.press(at) : this.tools.grip(at, alt);
  }

  drag(at: Point, alt: boolean): void {
    if (this.gestures) this.gestures.dragTo(at, alt);
    else this.tools.drag(at, alt);
  }

  hold(alt: boolean): void {
    this.gestures?.hold(alt);
  }

  letGo(): void {
    if (this.gestures) this.gestures.release();
    else this.tools.letGo();
  }

  over(at: Point): 'move' | 'stretch' | undefined {
    if (!this.gestures) return this.tools.over(at);
    return this.gestures.hover(at) ? 'move' : undefined;
  }

  async use(at: Point): Promise<void> {
    if (this.gestures) this.gestures.clickBeside(at);
    else await this.tools.use(at);
  }

  async hover(at: Point): Promise<void> {
    if (this.gestures) this.gestures.hover(at);
    else await this.tools.hover(at);
  }

  leave(): void {
    this.gestures?.hover(undefined);
    this.tools.leave();
  }

  /** What the plan does not know moves the view. */
  key(press: KeyPress): boolean {
    return this.gestures ? this.gestures.key(press) : this.tools.key(press);
  }

  escape(): boolean {
    if (!this.gestures) return this.tools.escape();
    this.gestures.escape();
    return true;
  }

  focusesOn(focusPicture: () => void): void {
    this.tools.focusesOn(focusPicture);
  }
}
