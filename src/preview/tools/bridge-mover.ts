/**
 * Bridges that stand, handled directly: picked, dragged along their gap, stretched by the handles at their sides, moved
 * by arrow keys, removed. Nothing is written by a drag: when the pointer lets go, the ghost stays where it is (`bridge-change.ts`).
 */

import type { Point } from '../../geometry/base/curve-types';
import { distance } from '../../geometry/base/vector';
import type { StandingBridgeData } from '../../protocol/standing-bridges';
import { type BridgeDrawing, BridgeHandles, type BridgeShape, distanceTo, handlesOf } from '../canvas/bridge-handles';
import type { BridgeBar } from './bridge-bar';
import { BridgeChange } from './bridge-change';
import { aimOfKey, aimOfMove, aimOfStretch, type KeyPress } from './bridge-gestures';
import { StandingBridgeList } from './standing-bridges';
import type { ToolContext } from './tool-context';

/** Pixels: how near to a handle, or to the ghost, is near enough. */
const REACH = 10;
/** Milliseconds after the last key until the ghost is proven. */
const REST = 250;
/** mm: the bridge this near to where one was put is that one. */
const SAME_PLACE = 0.5;

interface Drag {
  readonly kind: 'move' | 'stretch';
  /** Where it began, in mm of the sheet, and what the bridge looked like then. */
  readonly from: Point;
  readonly shape: BridgeShape;
  moved: boolean;
}

export class BridgeMover {
  readonly handles = new BridgeHandles();
  readonly list: StandingBridgeList;
  private hovered: StandingBridgeData | undefined;
  private drag: Drag | undefined;
  /** Where the bridge that is worked on stands once the text has changed. */
  private again: { readonly layer: string; readonly centre: Point } | undefined;

  private readonly context: ToolContext;
  private readonly change: BridgeChange;

  constructor(context: ToolContext, bar: BridgeBar) {
    this.context = context;
    this.list = new StandingBridgeList(context);
    this.change = new BridgeChange(context, bar, {
      escape: () => this.escape(),
      dropped: () => {
        this.drag = undefined;
      },
      puts: (centre) => {
        const { selected } = this;
        this.again = selected && centre && { layer: selected.layer, centre };
      },
    });
  }

  private get selected(): StandingBridgeData | undefined {
    return this.change.bridge;
  }

  get active(): StandingBridgeData | undefined {
    return this.selected;
  }

  /** What a press there would take hold of. @param at in the window */
  over(at: Point): 'stretch' | 'move' | undefined {
    const { selected } = this;
    const place = selected && this.context.placeOf(selected.layer);
    if (selected && place && !this.change.isRemoval) {
      const shape = this.change.ghost ?? selected;
      const handles = handlesOf(shape, place, this.context.viewport);
      if (handles.some((handle) => distance(handle, at) < REACH)) return 'stretch';
      if (this.change.ghost && distanceTo(shape, at, place, this.context.viewport) < REACH) return 'move';
    }
    return this.list.near(at) ? 'move' : undefined;
  }

  /** Lights up what is there. @returns whether a bridge is */
  hover(at: Point | undefined): boolean {
    const bridge = at && this.list.near(at);
    if (bridge !== this.hovered) {
      this.hovered = bridge;
      this.context.redraw();
    }
    return bridge !== undefined;
  }

  /**
   * Takes hold of a bridge or a handle.
   * @param directly whether a bridge is dragged that was not selected before
   * @returns whether the drag is ours
   */
  press(at: Point, directly: boolean): boolean {
    const over = this.over(at);
    if (!over) return false;
    const bridge = this.list.near(at);
    const isOther = over === 'move' && bridge && bridge.id !== this.selected?.id && !this.isOnGhost(at);
    if (isOther && !directly) return false;
    if (isOther) this.select(bridge);
    const { selected } = this;
    const from = selected && this.inSheet(at);
    if (!selected || !from) return false;
    this.drag = { kind: over, from, shape: this.change.ghost ?? selected, moved: false };
    return true;
  }

  dragTo(at: Point): void {
    const { drag } = this;
    const to = this.inSheet(at);
    if (!drag || !to) return;
    drag.moved = true;
    this.change.aim(
      drag.kind === 'move' ? aimOfMove(drag.shape, drag.from, to) : aimOfStretch(drag.shape, drag.from, to),
    );
  }

  /** @returns the bridge where it was only clicked */
  release(): StandingBridgeData | undefined {
    const { drag } = this;
    this.drag = undefined;
    if (!drag) return undefined;
    if (!drag.moved) return this.selected;
    this.change.proveSoon(0);
    return undefined;
  }

  select(bridge: StandingBridgeData | undefined): void {
    this.change.drop();
    [this.change.bridge, this.hovered] = [bridge, undefined];
    this.again = bridge && { layer: bridge.layer, centre: bridge.centre };
    if (bridge) this.context.say(this.spoken(bridge));
    this.context.redraw();
  }

  /** @returns whether the key meant something to the bridge that is selected */
  key(press: KeyPress): boolean {
    const { selected } = this;
    if (!selected) return false;
    if (press.key === 'Delete' || press.key === 'Backspace') this.change.remove();
    else if (press.key === 'Enter') return this.change.enter();
    else {
      const aim = aimOfKey(this.change.ghost ?? selected, press);
      if (!aim) return false;
      this.change.aim(aim);
      this.change.proveSoon(REST);
    }
    return true;
  }

  /** Takes away the ghost, then the selection. @returns whether there was anything */
  escape(): boolean {
    if (this.change.isBegun) this.change.drop();
    else if (this.selected) this.select(undefined);
    else return false;
    this.context.redraw();
    return true;
  }

  /** The text has changed: what was worked on is looked for in the new one. */
  async renew(): Promise<void> {
    const { again } = this;
    this.change.clear();
    [this.change.bridge, this.hovered] = [undefined, undefined];
    if (!again) return;
    await this.list.load();
    this.change.bridge ??= this.list.standingAt(again.layer, again.centre, SAME_PLACE);
    this.context.redraw();
  }

  forget(): void {
    this.again = undefined;
    this.select(undefined);
  }

  /** A bridge of a layer that does not show any more is let go. */
  dropUnseen(): void {
    if (this.selected && !this.context.placeOf(this.selected.layer)) this.forget();
  }

  draw(): void {
    this.handles.draw(this.drawing(), this.context.viewport);
  }

  private drawing(): BridgeDrawing | undefined {
    const bridge = this.selected ?? this.hovered;
    const place = bridge && this.context.placeOf(bridge.layer);
    if (!bridge || !place) return undefined;
    if (bridge !== this.selected) return { stands: bridge, state: 'hovered', place };
    if (this.change.isRemoval) return { stands: bridge, state: 'removed', place };
    if (!this.change.ghost) return { stands: bridge, state: 'selected', place };
    return { stands: bridge, ghost: this.change.ghost, state: this.change.isRefused ? 'refused' : 'moved', place };
  }

  private isOnGhost(at: Point): boolean {
    const place = this.selected && this.context.placeOf(this.selected.layer);
    return (
      this.change.ghost !== undefined &&
      place !== undefined &&
      distanceTo(this.change.ghost, at, place, this.context.viewport) < REACH
    );
  }

  private inSheet(at: Point): Point | undefined {
    const { selected, context } = this;
    return selected && context.placesAt(at).find(({ layer }) => layer === selected.layer)?.point;
  }

  private spoken(bridge: StandingBridgeData): string {
    const name = this.context.stack?.layers.find(({ id }) => id === bridge.layer)?.name ?? '';
    const all = this.list.inOrder;
    const which = `Bridge ${all.findIndex(({ id }) => id === bridge.id) + 1} of ${all.length}`;
    const size = `${which}: ${bridge.width.toFixed(2)} mm wide, ${bridge.length.toFixed(1)} mm long, in layer ${name}.`;
    return `${size} Arrow keys move it along the gap, brackets change its width, Delete removes it.`;
  }
}
