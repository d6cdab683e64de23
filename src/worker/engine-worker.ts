/** The engine as somebody who is asked: takes requests, does the most urgent first, and stops when it is told to. */

import { Stopped, underWatch } from '../base/checkpoint';
import { describeShapeAt } from '../engine/index';
import { placeSvg } from '../picture/place-svg';
import type { EngineAnswers, EngineRequest, FromWorker, ToWorker } from '../protocol/engine-worker';
import { Priority, RunSignals } from '../protocol/run-signals';
import type { FindingId } from '../report/finding-id';
import type { Report } from '../report/report';
import { BenchRequests } from './bench/bench-requests';
import { CheckStore } from './check-store';
import type { MemoryWatch } from './documents/checked-document';
import { BackgroundProofs } from './fixes/background-proofs';
import { bridgeSideAt } from './fixes/refactors';
import { type Task, TaskQueue } from './task-queue';

type Ask = Extract<ToWorker, { type: 'ask' }>;

export class EngineWorker {
  private readonly queue = new TaskQueue();
  private readonly store: CheckStore;
  private readonly bench = new BenchRequests((checked) => this.store.fixesOf(checked));
  private readonly carets = new Map<string, number>();
  private signals = new RunSignals();
  private waking = false;

  private readonly post: (message: FromWorker) => void;

  /** @param memory how a host says what memory a run may use; without it, memory is not watched */
  constructor(post: (message: FromWorker) => void, memory: MemoryWatch = {}) {
    this.post = post;
    this.store = new CheckStore(memory);
  }

  receive(message: ToWorker): void {
    if (message.type === 'start') this.signals = new RunSignals(message.memory);
    else if (message.type === 'ask') this.take(message);
    else if (message.type === 'caret') this.carets.set(message.uri, message.offset);
    else if (message.type === 'forget') this.store.forget(message.key);
    else if (this.queue.remove(message.id)) this.post({ type: 'cancelled', id: message.id });
  }

  private take({ id, priority, request }: Ask): void {
    this.signals.heard(priority);
    const answer = this.answerTo(request);
    this.add({ id, priority, gaveWay: false, run: () => this.post({ type: 'answer', id, answer: answer() }) });
  }

  /** What of a request must be done now is done now; the rest when its turn comes. */
  private answerTo(request: EngineRequest): () => unknown {
    if (request.kind !== 'check') return () => this.answer(request);
    const sources = this.store.sources(request.files);
    return (): EngineAnswers['check'] => {
      const facts = this.store.check(request, sources);
      this.proveAhead(request.key);
      return facts;
    };
  }

  private answer(request: Exclude<EngineRequest, { kind: 'check' }>): unknown {
    if (request.kind === 'bench') {
      const checked = this.store.document(request.params.uri);
      return (checked && this.bench.answer(checked, request.method, request.params, request.openConfig)) ?? null;
    }
    const checked = this.store.document(request.uri, request.version);
    const fixes = checked && this.store.fixesOf(checked);
    switch (request.kind) {
      case 'hover':
        return checked && (describeShapeAt(checked.report, request.offset) ?? null);
      case 'bridgeSide':
        return checked && bridgeSideAt(checked, request.offset);
      case 'placePicture':
        return checked && placePicture(checked.report, request.finding);
      case 'offers':
        return fixes?.facts();
      case 'refactors':
        return fixes?.refactorsAt(request.offset) ?? [];
      case 'prove':
        return fixes?.prove(request.id, request.offset) ?? changed(request.id);
      case 'proveSafe':
        return fixes?.proveSafe() ?? changed('');
    }
  }

  /** What is offered is told first, then what becomes of it. */
  private proveAhead(key: string): void {
    for (const document of this.store.documentsOf(key)) {
      if (!document.file.open || !document.stencil) continue;
      const fixes = this.store.fixesOf(document);
      const proofs = new BackgroundProofs(
        fixes,
        () => this.carets.get(document.uri),
        (facts) => this.post({ type: 'offers', facts }),
      );
      const isLast = () => this.store.document(document.uri) === document;
      this.inBackground(() => isLast() && this.post({ type: 'offers', facts: fixes.facts() }));
      this.inBackground(() => isLast() && proofs.run());
    }
  }

  private inBackground(run: () => void): void {
    this.add({ id: 0, priority: Priority.background, gaveWay: false, run });
  }

  private add(task: Task): void {
    this.queue.add(task);
    this.wake();
  }

  /** Messages that wait already are heard before the next task. */
  private wake(): void {
    if (this.waking) return;
    this.waking = true;
    setTimeout(() => {
      this.waking = false;
      // What was sent meanwhile is heard first.
      const task = this.signals.isMoreUrgent(Priority.background) ? undefined : this.queue.next();
      if (task) this.run(task);
      if (this.queue.size > 0) this.wake();
    }, 0);
  }

  private run(task: Task): void {
    try {
      if (this.isCancelled(task)) this.post({ type: 'cancelled', id: task.id });
      else underWatch(() => (this.isCancelled(task) || this.mustGiveWay(task) ? 'cancelled' : undefined), task.run);
    } catch (error) {
      if (error instanceof Stopped && error.reason === 'cancelled') this.interrupted(task);
      else this.failed(task, error);
    }
  }

  private isCancelled({ id }: Task): boolean {
    return id > 0 && this.signals.isCancelled(id);
  }

  /** Background work always, a check once: it must come to an end some day. */
  private mustGiveWay({ priority, gaveWay }: Task): boolean {
    if (priority === Priority.background) return this.signals.isMoreUrgent(priority);
    return priority === Priority.check && !gaveWay && this.signals.isMoreUrgent(Priority.glance);
  }

  private interrupted(task: Task): void {
    if (this.isCancelled(task)) this.post({ type: 'cancelled', id: task.id });
    else {
      task.gaveWay = true;
      this.queue.addAgain(task);
    }
  }

  private failed({ id }: Task, error: unknown): void {
    this.post({ type: 'failed', id, message: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

function changed(id: string): EngineAnswers['prove'] {
  return { id, outcome: 'refused', reason: 'The drawing has changed since; choose the fix again.' };
}

function placePicture(report: Report, id: FindingId): string | undefined {
  const finding = report.findings.find((each) => each.id === id);
  return finding && placeSvg(report, finding);
}
