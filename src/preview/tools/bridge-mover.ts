/**
 * Bridges that stand, handled directly: picked, dragged along their gap, stretched by the handles at their sides, moved
 * by arrow keys, removed. Nothing is written by a drag: when the pointer lets go, the ghost stays where it is and is
 * proven, and Apply or Enter writes it. So a slip of the hand costs nothing, and several steps (a drag, a few arrow
 * keys, a width) make one change of the text and one step of undo.
 */

import type { Point } from '../../geometry/base/curve-types';
import { distance } from '../../geometry/base/vector';
import type { BridgeOffer, BridgeRefusal } from '../../protocol/index';
import type { GhostAnswer, StandingBridgeData, WantedBridge } from '../../protocol/standing-bridges';
import { type BridgeDrawing, BridgeHandles, type BridgeShape, distanceTo, handlesOf } from '../canvas/bridge-handles';
import type { BridgeBar } from './bridge-bar';
import { type Aim, aimOfKey, aimOfMove, aimOfStretch, type KeyPress, provisional, shapeOf } from './bridge-gestures';
import { sentenceOf, TEXT_CHANGED } from './bridge-tool';
import { StandingBridgeList } from './standing-bridges';
import type { ToolContext } from './tool-context';

/** Pixels: how near to a handle, or to the ghost, is near enough. */
const REACH = 10;
/** Milliseconds after the last key until the ghost is proven. */
const REST = 250;
/** mm: a change smaller than this is none. */
const NOTHING = 0.004;
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
  private selected: StandingBridgeData | undefined;
  /** As the engine placed it last, and as it is drawn. */
  private answered: BridgeShape | undefined;
  private ghost: BridgeShape | undefined;
  private title = '';
  private refused = false;
  private removing = false;
  private drag: Drag | undefined;
  private next: Aim | undefined;
  private asking = false;
  private resting: ReturnType<typeof setTimeout> | undefined;
  /** Counts what was wanted: only the proof of the last counts. */
  private turn = 0;
  private proven: BridgeOffer | undefined;
  private applyWhenProven = false;
  /** Where the bridge that is worked on stands once the text has changed. */
  private again: { readonly layer: string; readonly centre: Point } | undefined;

  private readonly context: ToolContext;
  private readonly bar: BridgeBar;

  constructor(context: ToolContext, bar: BridgeBar) {
    this.context = context;
    this.bar = bar;
    this.list = new StandingBridgeList(context);
  }

  get active(): StandingBridgeData | undefined {
    return this.selected;
  }

  /** What a press there would take hold of. @param at in the window */
  over(at: Point): 'stretch' | 'move' | undefined {
    const { selected } = this;
    const place = selected && this.context.placeOf(selected.layer);
    if (selected && place && !this.removing) {
      const shape = this.ghost ?? selected;
      const handles = handlesOf(shape, place, this.context.viewport);
      if (handles.some((handle) => distance(handle, at) < REACH)) return 'stretch';
      if (this.ghost && distanceTo(shape, at, place, this.context.viewport) < REACH) return 'move';
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
    this.drag = { kind: over, from, shape: this.ghost ?? selected, moved: false };
    return true;
  }

  dragTo(at: Point): void {
    const { drag } = this;
    const to = this.inSheet(at);
    if (!drag || !to) return;
    drag.moved = true;
    this.aim(drag.kind === 'move' ? aimOfMove(drag.shape, drag.from, to) : aimOfStretch(drag.shape, drag.from, to));
  }

  /** @returns the bridge where it was only clicked */
  release(): StandingBridgeData | undefined {
    const { drag } = this;
    this.drag = undefined;
    if (!drag) return undefined;
    if (!drag.moved) return this.selected;
    this.proveSoon(0);
    return undefined;
  }

  select(bridge: StandingBridgeData | undefined): void {
    this.dropGhost();
    [this.selected, this.hovered] = [bridge, undefined];
    this.again = bridge && { layer: bridge.layer, centre: bridge.centre };
    if (bridge) this.context.say(this.spoken(bridge));
    this.context.redraw();
  }

  /** @returns whether the key meant something to the bridge that is selected */
  key(press: KeyPress): boolean {
    const { selected } = this;
    if (!selected) return false;
    if (press.key === 'Delete' || press.key === 'Backspace') this.remove();
    else if (press.key === 'Enter') return this.enter();
    else {
      const aim = aimOfKey(this.ghost ?? selected, press);
      if (!aim) return false;
      this.aim(aim);
      this.proveSoon(REST);
    }
    return true;
  }

  /** Takes away the ghost, then the selection. @returns whether there was anything */
  escape(): boolean {
    if (this.ghost || this.removing) this.dropGhost();
    else if (this.selected) this.select(undefined);
    else return false;
    this.context.redraw();
    return true;
  }

  /** The text has changed: what was worked on is looked for in the new one. */
  async renew(): Promise<void> {
    const { again } = this;
    this.clearGhost();
    [this.selected, this.hovered] = [undefined, undefined];
    if (!again) return;
    await this.list.load();
    this.selected ??= this.list.standingAt(again.layer, again.centre, SAME_PLACE);
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
    if (this.removing) return { stands: bridge, state: 'removed', place };
    if (!this.ghost) return { stands: bridge, state: 'selected', place };
    return { stands: bridge, ghost: this.ghost, state: this.refused ? 'refused' : 'moved', place };
  }

  private isOnGhost(at: Point): boolean {
    const place = this.selected && this.context.placeOf(this.selected.layer);
    return (
      this.ghost !== undefined &&
      place !== undefined &&
      distanceTo(this.ghost, at, place, this.context.viewport) < REACH
    );
  }

  /** Shows at once about what is wanted, and asks for exactly that; while an answer is under way, only the last counts. */
  private aim(aim: Aim): void {
    const { selected } = this;
    if (!selected) return;
    this.wantAnew();
    this.bar.dropNotice();
    this.ghost = provisional(this.answered ?? selected, aim);
    this.next = aim;
    this.context.redraw();
    void this.follow(selected);
  }

  private async follow(bridge: StandingBridgeData): Promise<void> {
    if (this.asking) return;
    this.asking = true;
    while (this.next && this.selected === bridge) {
      const aim = this.next;
      this.next = undefined;
      const answer = await this.context.host.bridgeGhost(bridge, wantedOf(bridge, aim));
      if (this.selected === bridge && !this.removing && this.ghost) this.hear(answer);
    }
    this.asking = false;
  }

  private hear(answer: GhostAnswer | undefined): void {
    if (!answer) return;
    this.refused = 'reason' in answer;
    if ('reason' in answer) this.show(answer.reason);
    else {
      this.title = answer.title;
      this.answered = shapeOf(answer.ghost, this.selected);
      // A newer wish is drawn from this answer, as well as can be.
      this.ghost = this.next ? provisional(this.answered, this.next) : this.answered;
      this.show(answer.title);
    }
    this.context.redraw();
  }

  private wantAnew(): void {
    this.endProof();
    this.removing = false;
  }

  /** No proof that is still to come counts: Enter may have asked for one while another was under way. */
  private endProof(): void {
    clearTimeout(this.resting);
    this.turn += 1;
    [this.proven, this.applyWhenProven] = [undefined, false];
  }

  private proveSoon(after: number): void {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => void this.prove(), after);
  }

  private async prove(): Promise<void> {
    const { selected, turn } = this;
    if (!selected) return;
    // The last answer about the place is waited for: what is proven is what is seen.
    if ((this.asking || this.next) && !this.removing) return this.proveSoon(30);
    if (this.refused && !this.removing) return;
    const wanted: WantedBridge = this.removing ? { remove: true } : wantedOf(selected, aimOf(this.ghost ?? selected));
    if (!('remove' in wanted) && wanted.to === undefined && wanted.width === undefined) {
      this.dropGhost();
      this.context.redraw();
      return;
    }
    const answer = await this.context.host.changeBridge(selected, wanted);
    if (turn !== this.turn || this.selected !== selected || !answer) return;
    this.settle(answer);
  }

  private settle(answer: BridgeOffer | BridgeRefusal): void {
    const isRefused = 'reason' in answer;
    this.proven = isRefused ? answer.anyway : answer;
    this.refused = isRefused;
    this.show(sentenceOf(answer), isRefused ? 'Change anyway' : undefined);
    this.context.redraw();
    if (this.applyWhenProven && !isRefused) void this.apply();
  }

  private show(sentence: string, label = this.removing ? 'Remove bridge' : 'Apply'): void {
    const apply = { label, run: () => void this.enter() };
    const can = !this.refused || this.proven !== undefined;
    this.bar.show({ sentence, ...(can && { apply }), drop: { label: 'Cancel', run: () => void this.escape() } });
  }

  private remove(): void {
    this.wantAnew();
    [this.removing, this.refused, this.ghost, this.answered] = [true, false, undefined, undefined];
    this.title = 'Remove this bridge';
    this.show(this.title);
    this.context.redraw();
    this.proveSoon(0);
  }

  /** @returns whether there is something to have */
  private enter(): boolean {
    if (!this.ghost && !this.removing) return false;
    if (this.proven) void this.apply();
    else {
      this.applyWhenProven = true;
      this.proveSoon(0);
    }
    return true;
  }

  private async apply(): Promise<void> {
    const { selected, context, ghost, removing } = this;
    if (!selected || !this.proven) return;
    this.endProof();
    this.again = removing ? undefined : { layer: selected.layer, centre: (ghost ?? selected).centre };
    const done = await context.host.putIn();
    const told = removing ? 'Bridge removed.' : 'Bridge changed.';
    // Until the new text is shown, the ghost stands for it.
    if (!done) this.clearGhost();
    if (done) this.bar.tellDone(told, context.host.undo);
    else this.bar.show({ sentence: TEXT_CHANGED, drop: { label: 'Close', run: () => this.bar.show(undefined) } });
    context.focusPicture();
    context.redraw();
  }

  private dropGhost(): void {
    const had = this.ghost !== undefined || this.removing;
    this.clearGhost();
    if (had) this.bar.show(undefined);
  }

  private clearGhost(): void {
    this.wantAnew();
    [this.ghost, this.answered, this.next, this.drag, this.refused] = [
      undefined,
      undefined,
      undefined,
      undefined,
      false,
    ];
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

/** Only what differs from what stands. */
function wantedOf(bridge: StandingBridgeData, { to, width }: Aim): { readonly to?: Point; readonly width?: number } {
  return {
    ...(distance(to, bridge.centre) > NOTHING && { to }),
    ...(Math.abs(width - bridge.width) > NOTHING && { width }),
  };
}

const aimOf = ({ centre, width }: BridgeShape): Aim => ({ to: centre, width });
