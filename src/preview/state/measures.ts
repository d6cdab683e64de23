/** What is measured for the present way of looking, asked for when it is needed and kept until the stack changes. */

import type { LayerId } from '../../engine/index';
import type { PictureNeck } from '../../picture/scene';
import type { PreviewStack } from '../../protocol/index';
import type { BareAfterSlip, SlippedLayer, SlipSweep } from '../../protocol/views';
import type { SlipFigures } from '../panels/slip-panel';
import type { BenchRequests } from './requests';
import { isSlipped, slipMatrix } from './slip';
import { type BenchState, layerKeys } from './state';

export class Measures {
  private stack: PreviewStack | undefined;
  private necksOf: { readonly layer: LayerId; readonly necks: readonly PictureNeck[] } | undefined;
  private askedNecks: LayerId | undefined;
  private bare: { readonly asked: string; readonly answer: BareAfterSlip | undefined } | undefined;
  private sweeps: readonly SlipSweep[] = [];
  private sweeping = false;
  /** One question about a slip is under way at a time; a drag asks the next when the answer is there. */
  private slipAsked = false;

  private readonly questions: BenchRequests;
  private readonly changed: () => void;

  /** @param changed is called when an answer has come */
  constructor(questions: BenchRequests, changed: () => void) {
    this.questions = questions;
    this.changed = changed;
  }

  get figures(): SlipFigures {
    return { bare: this.bare?.answer, sweeps: this.sweeps, sweeping: this.sweeping };
  }

  get bareOutline(): string {
    return this.bare?.answer?.seams ?? '';
  }

  necks({ sheet }: BenchState): readonly PictureNeck[] {
    return this.necksOf && this.necksOf.layer === this.stack?.layers[sheet]?.id ? this.necksOf.necks : [];
  }

  /** Asks for what is not known yet. */
  update(stack: PreviewStack, state: BenchState): void {
    if (stack !== this.stack) {
      // What was measured stays to be seen until the new figures are there, but for the sweep, which nobody repeats.
      this.stack = stack;
      this.askedNecks = undefined;
      this.sweeps = [];
      this.bare = this.bare && { asked: '', answer: this.bare.answer };
    }
    if (state.mode === 'sheet') void this.askNecks(stack, state.sheet);
    if (state.mode === 'print') void this.askSlip(stack, state);
  }

  /** Every layer slips to every side, one after the other. */
  async sweep(): Promise<void> {
    const { stack } = this;
    if (!stack || this.sweeping) return;
    this.sweeping = true;
    this.sweeps = [];
    this.changed();
    for (const { id } of stack.layers) {
      if (stack !== this.stack) break;
      const sweep = await this.questions.ask({ kind: 'sweep', layer: id });
      if (sweep && stack === this.stack) this.sweeps = [...this.sweeps, sweep];
      this.changed();
    }
    this.sweeping = false;
    this.changed();
  }

  private async askNecks(stack: PreviewStack, sheet: number): Promise<void> {
    const layer = stack.layers[sheet]?.id;
    if (layer === undefined || this.askedNecks === layer) return;
    this.askedNecks = layer;
    const answer = await this.questions.ask({ kind: 'necks', layer });
    if (stack !== this.stack || this.askedNecks !== layer || !answer) return;
    this.necksOf = answer;
    this.changed();
  }

  private async askSlip(stack: PreviewStack, state: BenchState): Promise<void> {
    const keys = layerKeys(stack);
    const places = stack.layers.flatMap(({ id }, i): SlippedLayer[] => {
      const slip = state.slips[keys[i] ?? ''];
      return slip && isSlipped(slip) ? [{ layer: id, place: slipMatrix(slip, stack.sheet) }] : [];
    });
    const asked = JSON.stringify(places);
    if (places.length === 0) {
      this.bare = undefined;
      return;
    }
    if (this.slipAsked || this.bare?.asked === asked) return;
    this.slipAsked = true;
    const answer = await this.questions.ask({ kind: 'slip', places });
    this.slipAsked = false;
    this.bare = stack === this.stack ? { asked, answer } : this.bare;
    // The layers may have moved on since: the page draws, and asks for what is wanted by then.
    this.changed();
  }
}
