/** What is known of the plan of a layer while it is looked at: from the question for it until it is in the text. */
import type { BridgeStyle } from '../../config/bridge-style';
import { count } from '../../config/values';
import type { LayerId } from '../../engine/index';
import type { BridgePreviewData } from '../../protocol/index';
import type { LayerPlan, LayerSketch, LeftIsland } from '../../protocol/layer-plan';
import { whyNot } from '../../report/refusal';
import type { BridgeShape } from '../canvas/bridge-handles';
import { shapeOf } from '../tools/bridge-gestures';
import type { PlanDrag } from './plan-drag';
import { PlannedBridges } from './planned-bridges';

/**
 * `checking`: the bridges are seen, but not proven yet. `ready`: they can be had. `added`: they are in the text, and are
 * drawn until the new text is shown.
 */
export type PlanStage = 'planning' | 'checking' | 'ready' | 'refused' | 'added';

/** How a bridge is drawn; `was` is where one stands that is on its way elsewhere. */
export type StripLook = 'sketched' | 'planned' | 'selected' | 'moving' | 'refused' | 'was';

export interface DrawnStrip {
  readonly outline: string;
  readonly shape: BridgeShape;
  readonly look: StripLook;
}

const FAILED = 'The bridges could not be planned; choose a style to try again.';

export class LayerPlanState {
  readonly layer: LayerId;
  /** The layer's, for people. */
  readonly name: string;
  readonly bridges = new PlannedBridges();
  stage: PlanStage = 'planning';
  /** Asked for; undefined for what the settings say. */
  style: BridgeStyle | undefined;
  drag: PlanDrag | undefined;
  /** By its number. */
  selected: number | undefined;
  /** What is said before all else, until something is done. */
  notice: string | undefined;
  private plan: LayerPlan | undefined;
  /** Those that went elsewhere with the last step. */
  private lastMoved: readonly number[] = [];

  constructor(layer: LayerId, name: string, style?: BridgeStyle) {
    this.layer = layer;
    this.name = name;
    this.style = style;
  }

  /** Another plan is asked for. What is shown stays until there is something else to show. */
  begin(style: BridgeStyle | undefined): void {
    this.style = style;
    this.stage = 'planning';
    this.plan = undefined;
    this.forgetMoves();
  }

  takeSketch({ style, bridges }: LayerSketch): void {
    this.style = style;
    this.stage = 'checking';
    this.bridges.begin(bridges);
  }

  /** @returns whether the bridges are those that were shown before */
  takePlan(plan: LayerPlan): boolean {
    const isSame = sameBridges(plan.bridges, this.bridges.all);
    this.style = plan.style;
    this.bridges.begin(plan.bridges);
    this.judge(plan);
    return isSame;
  }

  /** The same plan, with what was moved proven. */
  judge(plan: LayerPlan): void {
    this.plan = plan;
    this.stage = 'reason' in plan.answer ? 'refused' : 'ready';
  }

  fail(): void {
    this.stage = 'refused';
    this.notice = FAILED;
  }

  /** Whether its bridges can be taken hold of: their numbers are known to the server. */
  get isHandled(): boolean {
    return this.plan !== undefined && this.stage !== 'added';
  }

  /** Whether it is still there to be changed and put in. */
  get isOpen(): boolean {
    return this.stage !== 'added';
  }

  /** Lets go of what is dragged, where it could stand last. @returns whether anything has moved */
  letGo(): boolean {
    const { drag } = this;
    this.drag = undefined;
    if (!drag?.moved) return false;
    this.notice = drag.reason === undefined ? undefined : `${drag.reason} It went back.`;
    if (drag.standing.length === 0) return false;
    this.bridges.move(drag.standing);
    this.awaitProof(drag.standing.map(({ bridge }) => bridge));
    return true;
  }

  /** What is shown now has to be proven. */
  awaitProof(moved: readonly number[] = []): void {
    this.lastMoved = moved;
    this.stage = 'checking';
  }

  private forgetMoves(): void {
    [this.drag, this.selected, this.notice, this.lastMoved] = [undefined, undefined, undefined, []];
  }

  /** What the settings say of the layer, once it is known. */
  get keepable(): boolean {
    return this.plan?.keep !== undefined;
  }

  /** What comes with the bridges as they stand: a sentence each. */
  get told(): readonly string[] {
    return this.stage === 'ready' && !this.drag?.moved ? (this.plan?.told ?? []) : [];
  }

  get left(): readonly LeftIsland[] {
    return this.plan?.left ?? [];
  }

  /** Whether the sentence says why something cannot be. */
  get isRefusing(): boolean {
    return this.drag?.reason !== undefined || this.notice !== undefined || (!this.drag && this.stage === 'refused');
  }

  get sentence(): string {
    const { drag, notice, stage, plan } = this;
    if (drag?.moved) return drag.reason ?? travelling(drag);
    if (notice !== undefined) return notice;
    if (stage === 'planning') return `Planning the bridges of "${this.name}"…`;
    if (stage === 'checking' || !plan) return `${count(this.bridges.all.length, 'bridge')}, being checked…`;
    return 'reason' in plan.answer ? whyNot(plan.answer) : plan.answer.title;
  }

  /** What is drawn, what is on its way uppermost. */
  get strips(): readonly DrawnStrip[] {
    const travels = this.drag?.moved ? this.drag.drawn : [];
    const away = new Set(travels.map(({ bridge }) => bridge));
    const look = this.drag?.reason === undefined ? 'moving' : 'refused';
    return [
      ...this.bridges.all.map((bridge, number) => ({
        outline: bridge.outline,
        shape: shapeOf(bridge),
        look: away.has(number) ? ('was' as const) : this.lookOf(number),
      })),
      ...travels.map(({ outline, shape }) => ({ outline, shape, look }) as const),
    ];
  }

  private lookOf(number: number): StripLook {
    if (!this.plan) return 'sketched';
    if (this.stage === 'refused' && this.lastMoved.includes(number)) return 'refused';
    return number === this.selected ? 'selected' : 'planned';
  }
}

function travelling({ drawn, question: { apart } }: PlanDrag): string {
  if (apart) return 'This bridge alone.';
  return drawn.length > 1
    ? `${drawn.length} bridges that are alike. Hold Alt to move this one alone.`
    : 'This bridge; no other is like it.';
}

function sameBridges(some: readonly BridgePreviewData[], others: readonly BridgePreviewData[]): boolean {
  return some.length === others.length && some.every(({ outline }, i) => outline === others[i]?.outline);
}
