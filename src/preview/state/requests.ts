/** What the page asks the server by way of the extension: the last question of each kind is the one that counts. */

import type { BridgeAtParams, BridgeOffer, BridgePlanParams, BridgeRefusal } from '../../protocol/index';
import type { PartAtParams, PartParams, PlaceAnswer } from '../../protocol/parts';
import type { BareAfterSlip, LayerNecks, SlipParams, SlipSweep } from '../../protocol/views';

/** Questions about the document that the page shows. */
export type BenchRequest =
  | { readonly kind: 'necks'; readonly layer: number }
  | { readonly kind: 'slip'; readonly places: SlipParams['places'] }
  | { readonly kind: 'sweep'; readonly layer: number }
  | ({ readonly kind: 'partAt' } & Omit<PartAtParams, 'uri'>)
  | ({ readonly kind: 'part' } & Omit<PartParams, 'uri'>)
  | ({ readonly kind: 'bridgeAt' } & Omit<BridgeAtParams, 'uri'>)
  | ({ readonly kind: 'bridgePlan' } & Omit<BridgePlanParams, 'uri'>)
  /** Of the extension itself: put the bridges of the last offer into the text. */
  | { readonly kind: 'putIn' };

export interface BenchAnswers {
  readonly necks: LayerNecks;
  readonly slip: BareAfterSlip;
  readonly sweep: SlipSweep;
  readonly partAt: PlaceAnswer;
  readonly part: PlaceAnswer;
  readonly bridgeAt: BridgeOffer | BridgeRefusal;
  readonly bridgePlan: BridgeOffer | BridgeRefusal;
  /** False where the text has changed since. */
  readonly putIn: boolean;
}

export type Post = (id: number, question: BenchRequest) => void;

export class BenchRequests {
  private count = 0;
  private readonly waiting = new Map<number, (answer: unknown) => void>();

  private readonly post: Post;

  constructor(post: Post) {
    this.post = post;
  }

  /** Answers undefined where the server knows no such document any more. */
  ask<Kind extends BenchRequest['kind']>(
    question: BenchRequest & { readonly kind: Kind },
  ): Promise<BenchAnswers[Kind] | undefined> {
    this.count += 1;
    const id = this.count;
    return new Promise((resolve) => {
      this.waiting.set(id, (answer) => resolve(answer as BenchAnswers[Kind] | undefined));
      this.post(id, question);
    });
  }

  hear(id: number, answer: unknown): void {
    this.waiting.get(id)?.(answer);
    this.waiting.delete(id);
  }
}
