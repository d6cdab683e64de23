/** What the page asks the server by way of the extension: the last question of each kind is the one that counts. */
import type { BareAfterSlip, LayerNecks, SlipParams, SlipSweep } from '../server/look-protocol';

/** Questions about the document that the page shows. */
export type Question =
  | { readonly kind: 'necks'; readonly layer: number }
  | { readonly kind: 'slip'; readonly places: SlipParams['places'] }
  | { readonly kind: 'sweep'; readonly layer: number };

export interface Answers {
  readonly necks: LayerNecks;
  readonly slip: BareAfterSlip;
  readonly sweep: SlipSweep;
}

export type Post = (id: number, question: Question) => void;

export class Questions {
  private count = 0;
  private readonly waiting = new Map<number, (answer: unknown) => void>();

  constructor(private readonly post: Post) {}

  /** Answers undefined where the server knows no such document any more. */
  ask<Kind extends Question['kind']>(question: Question & { readonly kind: Kind }): Promise<Answers[Kind] | undefined> {
    const id = ++this.count;
    return new Promise((resolve) => {
      this.waiting.set(id, (answer) => resolve(answer as Answers[Kind] | undefined));
      this.post(id, question);
    });
  }

  hear(id: number, answer: unknown): void {
    this.waiting.get(id)?.(answer);
    this.waiting.delete(id);
  }
}
