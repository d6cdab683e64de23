/** The engine as the server sees it: it is asked, and answers when it can. It is started again when it dies. */
import type { EngineAnswers, EngineRequest, FromWorker, ToWorker } from '../../protocol/engine-worker';
import type { OfferFacts } from '../../protocol/offers';
import { type Priority, RunSignals } from '../../protocol/run-signals';

/** A running worker. */
export interface EngineChannel {
  post(message: ToWorker): void;
  end(): void;
}

/** @param ended is told why a worker came to an end that nobody has ended */
export type StartEngine = (hear: (message: FromWorker) => void, ended: (reason: string) => void) => EngineChannel;

export interface EngineOutlet {
  /** What was found out ahead. */
  offers(facts: OfferFacts): void;
  /** A new worker runs, which knows nothing yet: what was being checked when the old one died is left out. */
  restarted(lost: ReadonlySet<string>): void;
  log(message: string): void;
}

/** A request that is under way. */
export interface Asked<T> {
  /** Undefined where it was cancelled, failed, or lost with its worker. Never rejects. */
  readonly answer: Promise<T | undefined>;
  cancel(): void;
}

interface Waiting {
  readonly request: EngineRequest;
  settle(answer: unknown): void;
}

type Answer<R extends EngineRequest> = EngineAnswers[R['kind']];

/** A worker that dies this often in that many milliseconds is not given its work again. */
const MAX_DEATHS = 3;
const DEATHS_WITHIN = 60_000;

export class EngineClient {
  private signals = new RunSignals();
  private channel: EngineChannel | undefined;
  private readonly waiting = new Map<number, Waiting>();
  /** The texts that the worker has, by their addresses. */
  private readonly sent = new Map<string, string>();
  private readonly deaths: number[] = [];
  private last = 0;

  private readonly start: StartEngine;
  private readonly outlet: EngineOutlet;

  constructor(start: StartEngine, outlet: EngineOutlet) {
    this.start = start;
    this.outlet = outlet;
  }

  /** Whether a check is under way or waits: other questions may then have to wait for long. */
  get checking(): boolean {
    return [...this.waiting.values()].some(({ request }) => request.kind === 'check');
  }

  ask<R extends EngineRequest>(request: R, priority: Priority): Asked<Answer<R>> {
    this.last += 1;
    const id = this.last;
    const answer = new Promise<Answer<R> | undefined>((resolve) => {
      this.waiting.set(id, { request, settle: (value) => resolve(value as Answer<R> | undefined) });
    });
    this.channel ??= this.begin();
    this.signals.sent(priority);
    this.channel.post({ type: 'ask', id, priority, request: this.withoutKnownTexts(request) });
    return { answer, cancel: () => this.cancel(id) };
  }

  /** Where the caret is, in the text that was checked last. */
  caret(uri: string, offset: number): void {
    this.channel?.post({ type: 'caret', uri, offset });
  }

  /** A document or project that nobody asks about any more. */
  forget(key: string): void {
    this.sent.clear();
    this.channel?.post({ type: 'forget', key });
  }

  dispose(): void {
    this.channel?.end();
    this.channel = undefined;
    this.settleAll();
  }

  private cancel(id: number): void {
    if (!this.waiting.has(id)) return;
    this.signals.cancel(id);
    this.channel?.post({ type: 'cancel', id });
    this.settle(id, undefined);
  }

  private begin(): EngineChannel {
    const signals = new RunSignals();
    this.signals = signals;
    const channel = this.start(
      (message) => this.hear(message),
      (reason) => {
        if (this.channel === channel) this.died(reason);
      },
    );
    channel.post({ type: 'start', memory: signals.memory });
    return channel;
  }

  private hear(message: FromWorker): void {
    if (message.type === 'offers') this.outlet.offers(message.facts);
    else if (message.type === 'answer') this.settle(message.id, message.answer);
    else {
      if (message.type === 'failed') this.outlet.log(`The engine failed: ${message.message}`);
      this.settle(message.id, undefined);
    }
  }

  private settle(id: number, answer: unknown): void {
    const waiting = this.waiting.get(id);
    this.waiting.delete(id);
    waiting?.settle(answer);
  }

  private settleAll(): void {
    for (const id of [...this.waiting.keys()]) this.settle(id, undefined);
  }

  private died(reason: string): void {
    this.outlet.log(`The engine's worker ended (${reason}); it is started again.`);
    this.channel = undefined;
    this.sent.clear();
    const lost = new Set(
      [...this.waiting.values()].flatMap(({ request }) => (request.kind === 'check' ? [request.key] : [])),
    );
    this.settleAll();
    const now = performance.now();
    this.deaths.push(now);
    if (this.deaths.filter((time) => now - time < DEATHS_WITHIN).length < MAX_DEATHS) this.outlet.restarted(lost);
  }

  /** A text is sent once for each time that it changes. */
  private withoutKnownTexts(request: EngineRequest): EngineRequest {
    if (request.kind !== 'check') return request;
    const files = request.files.map(({ text, ...file }) => {
      if (text === undefined || this.sent.get(file.uri) === text) return file;
      this.sent.set(file.uri, text);
      return { ...file, text };
    });
    return { ...request, files };
  }
}
