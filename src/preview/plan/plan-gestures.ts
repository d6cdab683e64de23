/** Pointer and keys on the bridges of a plan: taken hold of, dragged with what is alike, stepped along their gaps. */
import type { Point } from '../../geometry/base/curve-types';
import { type BridgeShape, distanceTo } from '../canvas/bridge-handles';
import { aimOfKey, type KeyPress, shapeOf } from '../tools/bridge-gestures';
import type { ToolContext } from '../tools/tool-context';
import type { LayerPlanState } from './layer-plan-state';
import { PlanDrag } from './plan-drag';

/** Pixels: how near to a bridge is near enough. */
const REACH = 10;
/** Milliseconds after the last key until what it moved is put there and proven. */
const REST = 250;

export interface PlanGestureActions {
  state(): LayerPlanState | undefined;
  /** A bridge is wanted elsewhere. */
  aimed(): void;
  /** Bridges have gone to other places. */
  moved(): void;
  apply(): void;
  close(): void;
  /** Brings a point of the layer's sheet into sight, mm. */
  show(at: Point): void;
}

export class PlanGestures {
  private hovered: number | undefined;
  private resting: ReturnType<typeof setTimeout> | undefined;
  /** The drag that was let go before it was answered. */
  private released: PlanDrag | undefined;
  private readonly context: ToolContext;
  private readonly actions: PlanGestureActions;

  constructor(context: ToolContext, actions: PlanGestureActions) {
    this.context = context;
    this.actions = actions;
  }

  /** The bridge whose measure is shown. */
  get active(): BridgeShape | undefined {
    const state = this.actions.state();
    if (state?.drag?.moved) return state.drag.reason === undefined ? state.drag.place : undefined;
    const number = this.hovered ?? state?.selected;
    const bridge = number === undefined ? undefined : state?.bridges.all[number];
    return bridge && shapeOf(bridge);
  }

  /** @param at in the window. @returns whether a bridge is there, which is then in hand */
  press(at: Point): boolean {
    const [state, pointer] = [this.actions.state(), this.inSheet(at)];
    const number = this.near(at);
    const bridge = number === undefined ? undefined : state?.bridges.all[number];
    if (!state || !pointer || !bridge || number === undefined) return false;
    this.finish();
    state.drag = new PlanDrag(number, bridge, pointer);
    this.select(number);
    return true;
  }

  /** @param apart whether what is alike stays where it is */
  dragTo(at: Point, apart: boolean): void {
    const pointer = this.inSheet(at);
    const drag = this.actions.state()?.drag;
    if (!drag || !pointer) return;
    drag.aim(pointer, apart);
    this.actions.aimed();
  }

  /** A key that holds alike bridges apart was pressed or let go. */
  hold(apart: boolean): void {
    if (this.actions.state()?.drag?.hold(apart)) this.actions.aimed();
  }

  /** What was dragged is put where it could stand last; if its last place is not answered yet, then as soon as it is. */
  release(): void {
    clearTimeout(this.resting);
    const drag = this.actions.state()?.drag;
    if (drag?.moved && !drag.isAnswered) this.released = drag;
    else this.finish();
  }

  /** An answer about the drag has come. */
  heard(): void {
    const drag = this.actions.state()?.drag;
    if (drag?.isAnswered && drag === this.released) this.finish();
  }

  hover(at: Point | undefined): boolean {
    const number = at && this.near(at);
    if (number !== this.hovered) {
      this.hovered = number;
      this.context.redraw();
    }
    return number !== undefined;
  }

  /** A click beside all of them. */
  clickBeside(at: Point): void {
    if (this.near(at) === undefined) this.select(undefined);
  }

  /** @returns whether the key meant something to the plan */
  key(press: KeyPress): boolean {
    const { key, shiftKey } = press;
    if (key === 'Escape') this.escape();
    else if (key === 'Enter') this.enter();
    else if (key.toLowerCase() === 'b') this.turn(shiftKey ? -1 : 1);
    else return this.step(press);
    return true;
  }

  escape(): void {
    const state = this.actions.state();
    clearTimeout(this.resting);
    if (state?.drag?.moved) [state.drag, state.notice] = [undefined, undefined];
    else if (state?.selected !== undefined) state.selected = undefined;
    else return this.actions.close();
    this.actions.aimed();
  }

  private enter(): void {
    this.release();
    this.actions.apply();
  }

  private turn(step: 1 | -1): void {
    const state = this.actions.state();
    const all = state?.bridges.all ?? [];
    if (!state?.isHandled || all.length === 0) return;
    this.finish();
    const from = state.selected ?? (step > 0 ? -1 : 0);
    const number = (from + step + all.length) % all.length;
    this.select(number);
    const bridge = all[number];
    if (!bridge) return;
    const { centre, width, length } = shapeOf(bridge);
    this.actions.show(centre);
    this.context.say(
      `Planned bridge ${number + 1} of ${all.length}: ${width.toFixed(2)} mm wide, ${length.toFixed(1)} mm long. ` +
        'Arrow keys move it with those that are alike, Alt with arrow keys moves it alone.',
    );
  }

  /** Arrow keys go along the gap; several within a moment make one step of the plan. */
  private step({ key, shiftKey, altKey }: KeyPress): boolean {
    const state = this.actions.state();
    const { selected } = state ?? {};
    const bridge = selected === undefined ? undefined : state?.bridges.all[selected];
    if (!state?.isHandled || selected === undefined || !bridge || !key.startsWith('Arrow')) return false;
    const drag = state.drag ?? new PlanDrag(selected, bridge, shapeOf(bridge).centre);
    const aim = aimOfKey(drag.place, { key, shiftKey, altKey: false });
    if (!aim) return false;
    state.drag = drag;
    drag.aim(aim.to, altKey);
    this.actions.aimed();
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.release(), REST);
    return true;
  }

  private finish(): void {
    clearTimeout(this.resting);
    this.released = undefined;
    const state = this.actions.state();
    if (!state?.drag) return;
    if (state.letGo()) this.actions.moved();
    else this.actions.aimed();
  }

  private select(number: number | undefined): void {
    const state = this.actions.state();
    if (!state) return;
    [state.selected, state.notice] = [number, undefined];
    this.actions.aimed();
  }

  private near(at: Point): number | undefined {
    const state = this.actions.state();
    const place = state && this.context.placeOf(state.layer);
    if (!state?.isHandled || !place) return undefined;
    const away = state.bridges.all.map((bridge) => distanceTo(shapeOf(bridge), at, place, this.context.viewport));
    const least = Math.min(...away);
    return least < REACH ? away.indexOf(least) : undefined;
  }

  private inSheet(at: Point): Point | undefined {
    const state = this.actions.state();
    return state && this.context.placesAt(at).find(({ layer }) => layer === state.layer)?.point;
  }
}
