/** A bridge of a plan on its way to another place, with what follows it. Sheet mm. */
import type { Point } from '../../geometry/base/curve-types';
import { add, distance, interpolate, subtract } from '../../geometry/base/vector';
import type { BridgePreviewData } from '../../protocol/index';
import type { PlanGhost, PlanGhostParams } from '../../protocol/layer-plan';
import { type BridgeShape, rectangleOf } from '../canvas/bridge-handles';
import { provisional, shapeOf } from '../tools/bridge-gestures';

type Ghosts = PlanGhost['ghosts'];

export class PlanDrag {
  readonly bridge: number;
  /** Where the pointer took hold of it, and how it stood then. */
  private readonly from: Point;
  private readonly shape: BridgeShape;
  private wanted: Point;
  private apart = false;
  /** The last answer, and the question that it is about. */
  private answer: PlanGhost | undefined;
  private answered: PlanGhostParams['move'] | undefined;
  private stood: Ghosts = [];

  constructor(bridge: number, { from, to, width, length }: BridgePreviewData, pointer: Point) {
    this.bridge = bridge;
    this.from = pointer;
    this.shape = shapeOf({ from, to, width, length });
    this.wanted = this.shape.centre;
  }

  /** Whether it has been dragged at all. */
  get moved(): boolean {
    return distance(this.wanted, this.shape.centre) > 0;
  }

  /** @param apart whether what is alike stays where it is */
  aim(pointer: Point, apart: boolean): void {
    this.wanted = add(this.shape.centre, subtract(pointer, this.from));
    this.apart = apart;
  }

  /** Whether it is held apart from now on. @returns whether that is news */
  hold(apart: boolean): boolean {
    const isNews = this.moved && apart !== this.apart;
    this.apart = apart;
    return isNews;
  }

  /** What is asked about it. */
  get question(): PlanGhostParams['move'] {
    return { bridge: this.bridge, to: this.wanted, apart: this.apart };
  }

  /** @param about the question that is answered */
  hear(answer: PlanGhost | undefined, about: PlanGhostParams['move']): void {
    this.answered = about;
    if (!answer) return;
    this.answer = answer;
    if (answer.reason === undefined) this.stood = answer.ghosts;
  }

  /** Whether the last answer is about where it is now. */
  get isAnswered(): boolean {
    return this.answered?.to === this.wanted && this.answered.apart === this.apart;
  }

  /** Why it cannot stand where it is now. */
  get reason(): string | undefined {
    return this.answer?.reason;
  }

  /** Where it and what follows it could all stand last: there they are put when it is let go. */
  get standing(): Ghosts {
    return this.stood;
  }

  /** What is drawn, itself first: at the pointer until the server has answered about that place. */
  get drawn(): readonly { readonly bridge: number; readonly outline: string; readonly shape: BridgeShape }[] {
    const { answer, bridge } = this;
    const own = answer?.ghosts.find((each) => each.bridge === bridge)?.preview;
    const others = (answer?.ghosts ?? []).filter((each) => each.bridge !== bridge);
    return [
      { bridge, outline: this.ownOutline(own), shape: this.place },
      ...others.map(({ bridge: number, preview }) => ({
        bridge: number,
        outline: preview.outline,
        shape: shapeOf(preview),
      })),
    ];
  }

  /** Where it stands or would stand. */
  get place(): BridgeShape {
    const own = this.answer?.ghosts.find((each) => each.bridge === this.bridge)?.preview;
    return own ? provisional(shapeOf(own), this.aimAt(own)) : { ...this.shape, centre: this.wanted };
  }

  private ownOutline(own: BridgePreviewData | undefined): string {
    return own && this.answered?.to === this.wanted ? own.outline : rectangleOf(this.place);
  }

  /** On from the answer as far as the pointer has gone since. */
  private aimAt({ from, to, width }: BridgePreviewData): { readonly to: Point; readonly width: number } {
    const since = subtract(this.wanted, this.answered?.to ?? this.wanted);
    return { to: add(interpolate(from, to, 0.5), since), width };
  }
}
