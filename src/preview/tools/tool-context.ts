/** What the tools have in common: what is shown and where it lies, whom they ask, and what they say aloud. */

import type { FindingId, LayerId } from '../../engine/index';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import type { BridgeOffer, BridgeRefusal, PreviewLayer, PreviewStack } from '../../protocol/index';
import type { LayerPlace, PickedPart, PlaceAnswer } from '../../protocol/parts';
import type { GhostAnswer, StandingBridgeData, StandingBridges, WantedBridge } from '../../protocol/standing-bridges';
import { html, setText } from '../dom/dom';
import type { PlanHost } from '../plan/plan-questions';
import { placeOfLayer, placesAtPoint, type SceneLayers } from '../state/scene-places';
import type { Size, Viewport } from '../state/viewport';

export interface ToolHost extends PlanHost {
  partAt(places: readonly LayerPlace[], reach: number, sheets: boolean): Promise<PlaceAnswer | undefined>;
  part(layer: LayerId, number: number): Promise<PlaceAnswer | undefined>;
  bridgeAt(layer: LayerId, point: Point): Promise<BridgeOffer | BridgeRefusal | undefined>;
  bridgePlan(finding: FindingId): Promise<BridgeOffer | BridgeRefusal | undefined>;
  standingBridges(): Promise<StandingBridges | undefined>;
  /** Where a bridge would stand, unproven. */
  bridgeGhost(bridge: StandingBridgeData, wanted: WantedBridge): Promise<GhostAnswer | undefined>;
  changeBridge(bridge: StandingBridgeData, wanted: WantedBridge): Promise<BridgeOffer | BridgeRefusal | undefined>;
  /** Takes back the last change of the text. */
  undo(): void;
  /**
   * Puts the bridges of the last offer into the text; answers false where the text has changed since.
   * @param keep whether the style of a plan is kept in `tombolo.json`
   */
  putIn(keep?: boolean): Promise<boolean>;
  reveal(text: Pick<PickedPart, 'uri' | 'from' | 'to'>): void;
  /** Whether Shift, arrows, full stop and comma are for sheets that slip. */
  slipping(): boolean;
  /** Keeps the picture in its place, whatever room there is for it, or fits it to its room again. */
  holdView(held: boolean): void;
  /** Brings a point of the picture into sight. */
  bringIntoView(point: Point): void;
}

export type ToolScene = SceneLayers & { readonly kind: string };

export class ToolContext {
  readonly status = html('div', { class: 'unseen', role: 'status' });
  stack: PreviewStack | undefined;
  scene: ToolScene = { kind: 'print', sceneLayers: [] };
  viewport: Viewport = { scale: 1, x: 0, y: 0 };
  size: Size = { width: 0, height: 0 };
  /** Gives the focus to the picture. */
  focusPicture: () => void = () => undefined;
  /** Counts the questions: only the answer to the last one is shown. */
  private turn = 0;
  /** How many clicks wait for their answer. */
  private waiting = 0;

  readonly host: ToolHost;
  readonly redraw: () => void;

  constructor(host: ToolHost, redraw: () => void) {
    this.host = host;
    this.redraw = redraw;
  }

  /** Begins a question. What it returns tells whether no other question has begun since. */
  nextQuestion(): () => boolean {
    this.dropQuestions();
    const { turn } = this;
    return () => turn === this.turn;
  }

  /** No answer that is still under way is shown. */
  dropQuestions(): void {
    this.turn += 1;
  }

  /** Until the work is done, a moving pointer asks nothing. */
  async whileBusy<T>(work: () => Promise<T>): Promise<T> {
    this.waiting += 1;
    return work().finally(() => {
      this.waiting -= 1;
    });
  }

  get busy(): boolean {
    return this.waiting > 0;
  }

  /** Whether an answer is about the text that is shown. */
  isCurrent(answer: PlaceAnswer | undefined): answer is PlaceAnswer {
    return answer !== undefined && answer.version === this.stack?.version;
  }

  layerOf({ layer }: PickedPart): PreviewLayer | undefined {
    return this.stack?.layers.find(({ id }) => id === layer);
  }

  /** From a layer's own mm to those of the picture; undefined where the layer does not show. */
  placeOf(layer: LayerId): Matrix | undefined {
    const index = this.stack?.layers.findIndex(({ id }) => id === layer) ?? -1;
    return index < 0 ? undefined : placeOfLayer(this.scene, index);
  }

  /** The outline point or edge that is near to a place, in mm of the picture. */
  snapped({ snap }: PlaceAnswer): Point | undefined {
    const place = snap && this.placeOf(snap.layer);
    return place && apply(place, snap.point);
  }

  /** @param at in window pixels */
  placesAt(at: Point): LayerPlace[] {
    return placesAtPoint(this.scene, this.viewport, at).flatMap(({ layer, point }) => {
      const id = this.stack?.layers[layer]?.id;
      return id === undefined ? [] : [{ layer: id, point }];
    });
  }

  /** The middle of the window, in its pixels. */
  get middle(): Point {
    return { x: this.size.width / 2, y: this.size.height / 2 };
  }

  say(text: string): void {
    setText(this.status, text);
  }
}
