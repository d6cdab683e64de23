/** Asks the server about the plan of a layer: only the last plan counts, and one place of a drag is asked about at a time. */
import type { BridgeStyle } from '../../config/bridge-style';
import type { LayerId } from '../../engine/index';
import type {
  LayerPlan,
  LayerPlanParams,
  LayerSketch,
  LayerSketchParams,
  PlanGhost,
  PlanGhostParams,
} from '../../protocol/layer-plan';
import type { PlanDrag } from './plan-drag';

/** What is asked about a layer, of the text that is shown. */
type Asked<Params> = Omit<Params, 'uri' | 'version'>;

export interface PlanHost {
  layerSketch(asked: Asked<LayerSketchParams>): Promise<LayerSketch | undefined>;
  layerPlan(asked: Asked<LayerPlanParams>): Promise<LayerPlan | undefined>;
  planGhost(asked: Asked<PlanGhostParams>): Promise<PlanGhost | undefined>;
  /** Nobody waits for the plan any more. */
  dropLayerPlan(): void;
}

export interface AskedPlan {
  readonly layer: LayerId;
  readonly style: BridgeStyle | undefined;
  readonly moved: LayerPlanParams['moved'];
}

/** A drag that is followed, the plan that it is in, and who hears of answers. */
interface Followed {
  readonly asked: AskedPlan;
  readonly drag: PlanDrag;
  heard(): void;
}

export class PlanQuestions {
  private turn = 0;
  private asking = false;
  private followed: Followed | undefined;
  private readonly host: PlanHost;

  constructor(host: PlanHost) {
    this.host = host;
  }

  /** @param hear is called with the sketch, then with the plan, unless another was asked for meanwhile */
  async plan(
    { layer, style }: AskedPlan,
    hear: { sketch(sketch: LayerSketch): void; plan(plan: LayerPlan | undefined): void },
  ): Promise<void> {
    const isLast = this.begin();
    const asked = { layer, ...(style && { style }) };
    const sketch = await this.host.layerSketch(asked);
    if (!isLast()) return;
    if (sketch) hear.sketch(sketch);
    const plan = await this.host.layerPlan(asked);
    if (isLast()) hear.plan(plan);
  }

  /** The same plan with what stands elsewhere, proven. */
  async prove({ layer, style, moved }: AskedPlan, hear: (plan: LayerPlan | undefined) => void): Promise<void> {
    const isLast = this.begin();
    const plan = await this.host.layerPlan({ layer, ...(style && { style }), ...(moved && { moved }) });
    if (isLast()) hear(plan);
  }

  /** No answer that is still under way is heard. */
  drop(): void {
    this.begin();
    this.host.dropLayerPlan();
  }

  /** Asks until the last drag is answered as it wants to be. */
  async follow(followed: Followed): Promise<void> {
    this.followed = followed;
    if (this.asking) return;
    this.asking = true;
    while (this.followed && !this.followed.drag.isAnswered) await this.ask(this.followed);
    this.asking = false;
  }

  private async ask({ asked: { layer, style, moved }, drag, heard }: Followed): Promise<void> {
    const move = drag.question;
    const answer = await this.host.planGhost({ layer, ...(style && { style }), ...(moved && { moved }), move });
    drag.hear(answer, move);
    heard();
  }

  private begin(): () => boolean {
    this.turn += 1;
    const { turn } = this;
    return () => turn === this.turn;
  }
}
