/** What the page asks the server by way of the extension: the last question of each kind is the one that counts. */
import type { BenchAnswers, BenchRequest } from '../../protocol/requests';

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
