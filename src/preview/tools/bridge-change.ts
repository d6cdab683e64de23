/**
 * A change of a bridge that stands, until it is written: a ghost follows what is aimed at, is proven where it comes to rest, and
 * Apply or Enter writes it. So a slip of the hand costs nothing, and several steps (a drag, a few arrow keys, a width) make one
 * change of the text and one step of undo.
 */
import type { Point } from '../../geometry/base/curve-types';
import { distance } from '../../geometry/base/vector';
import type { BridgeOffer, BridgeRefusal } from '../../protocol/index';
import type { GhostAnswer, StandingBridgeData, WantedBridge } from '../../protocol/standing-bridges';
import type { BridgeShape } from '../canvas/bridge-handles';
import type { BridgeBar } from './bridge-bar';
import { type Aim, provisional, shapeOf } from './bridge-gestures';
import { sentenceOf, TEXT_CHANGED } from './bridge-tool';
import type { ToolContext } from './tool-context';

/** mm: a change smaller than this is none. */
const NOTHING = 0.004;

export interface ChangeOwner {
  /** Cancel was pressed. */
  escape(): unknown;
  /** Nothing is left of the ghost. */
  dropped(): void;
  /** It is about to be written. @param centre where the bridge will stand, mm of the sheet; undefined where it goes */
  puts(centre: Point | undefined): void;
}

export class BridgeChange {
  /** What is changed: the bridge that is selected. */
  bridge: StandingBridgeData | undefined;
  /** As the engine placed it last, and as it is drawn. */
  private answered: BridgeShape | undefined;
  private drawn: BridgeShape | undefined;
  private refused = false;
  private removing = false;
  private next: Aim | undefined;
  private asking = false;
  private resting: ReturnType<typeof setTimeout> | undefined;
  /** Counts what was wanted: only the proof of the last counts. */
  private turn = 0;
  private proven: BridgeOffer | undefined;
  private applyWhenProven = false;

  private readonly context: ToolContext;
  private readonly bar: BridgeBar;
  private readonly owner: ChangeOwner;

  constructor(context: ToolContext, bar: BridgeBar, owner: ChangeOwner) {
    this.context = context;
    this.bar = bar;
    this.owner = owner;
  }

  get ghost(): BridgeShape | undefined {
    return this.drawn;
  }

  get isRefused(): boolean {
    return this.refused;
  }

  get isRemoval(): boolean {
    return this.removing;
  }

  get isBegun(): boolean {
    return this.drawn !== undefined || this.removing;
  }

  /** Shows at once about what is wanted, and asks for exactly that; while an answer is under way, only the last counts. */
  aim(aim: Aim): void {
    const { bridge } = this;
    if (!bridge) return;
    this.wantAnew();
    this.bar.dropNotice();
    this.drawn = provisional(this.answered ?? bridge, aim);
    this.next = aim;
    this.context.redraw();
    void this.follow(bridge);
  }

  private async follow(bridge: StandingBridgeData): Promise<void> {
    if (this.asking) return;
    this.asking = true;
    while (this.next && this.bridge === bridge) {
      const aim = this.next;
      this.next = undefined;
      const answer = await this.context.host.bridgeGhost(bridge, wantedOf(bridge, aim));
      if (this.bridge === bridge && !this.removing && this.drawn) this.hear(answer);
    }
    this.asking = false;
  }

  private hear(answer: GhostAnswer | undefined): void {
    if (!answer) return;
    this.refused = 'reason' in answer;
    if ('reason' in answer) this.show(answer.reason);
    else {
      this.answered = shapeOf(answer.ghost, this.bridge);
      // A newer wish is drawn from this answer, as well as can be.
      this.drawn = this.next ? provisional(this.answered, this.next) : this.answered;
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

  proveSoon(after: number): void {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => void this.prove(), after);
  }

  private async prove(): Promise<void> {
    const { bridge, turn } = this;
    if (!bridge) return;
    // The last answer about the place is waited for: what is proven is what is seen.
    if ((this.asking || this.next) && !this.removing) return this.proveSoon(30);
    if (this.refused && !this.removing) return;
    const wanted: WantedBridge = this.removing ? { remove: true } : wantedOf(bridge, aimOf(this.drawn ?? bridge));
    if (!('remove' in wanted) && wanted.to === undefined && wanted.width === undefined) {
      this.drop();
      this.context.redraw();
      return;
    }
    const answer = await this.context.host.changeBridge(bridge, wanted);
    if (turn !== this.turn || this.bridge !== bridge || !answer) return;
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
    this.bar.show({ sentence, ...(can && { apply }), drop: { label: 'Cancel', run: () => void this.owner.escape() } });
  }

  remove(): void {
    this.wantAnew();
    [this.removing, this.refused, this.drawn, this.answered] = [true, false, undefined, undefined];
    this.show('Remove this bridge');
    this.context.redraw();
    this.proveSoon(0);
  }

  /** @returns whether there is something to have */
  enter(): boolean {
    if (!this.isBegun) return false;
    if (this.proven) void this.apply();
    else {
      this.applyWhenProven = true;
      this.proveSoon(0);
    }
    return true;
  }

  private async apply(): Promise<void> {
    const { bridge, context, drawn, removing } = this;
    if (!bridge || !this.proven) return;
    this.endProof();
    this.owner.puts(removing ? undefined : (drawn ?? bridge).centre);
    const done = await context.host.putIn();
    const told = removing ? 'Bridge removed.' : 'Bridge changed.';
    // Until the new text is shown, the ghost stands for it.
    if (!done) this.clear();
    if (done) this.bar.tellDone(told, context.host.undo);
    else this.bar.show({ sentence: TEXT_CHANGED, drop: { label: 'Close', run: () => this.bar.show(undefined) } });
    context.focusPicture();
    context.redraw();
  }

  /** Gives it up, and takes what is said of it away. */
  drop(): void {
    const had = this.isBegun;
    this.clear();
    if (had) this.bar.show(undefined);
  }

  clear(): void {
    this.wantAnew();
    [this.drawn, this.answered, this.next, this.refused] = [undefined, undefined, undefined, false];
    this.owner.dropped();
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
