/** The checks that are under way: one for each document or project at a time. */
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { CheckFacts } from '../../protocol/facts';
import { Priority } from '../../protocol/run-signals';
import type { Asked, EngineClient } from '../engine/engine-client';
import { type CheckInput, isSameInput } from './check-input';
import type { KnownConfigs } from './known-configs';

/** What is to become of a check. */
export interface Wish {
  /** Check it though nobody has called it a stencil. */
  readonly always: boolean;
  /** Say what was found, be it that this is no stencil. */
  readonly announced: boolean;
}

/** A check that is under way. */
export interface Run {
  readonly input: CheckInput;
  wish: Wish;
  cancelled: boolean;
  readonly asked: Asked<CheckFacts>;
  /** `done` when its facts are known, `lost` when it is clear that they never will be. */
  outcome: Promise<'done' | 'cancelled' | 'lost'>;
}

export class CheckRuns {
  /** By what is checked. */
  private readonly runs = new Map<string, Run>();
  private readonly engine: EngineClient;
  private readonly configs: KnownConfigs;
  private readonly ended: (run: Run, facts: CheckFacts) => void;
  private readonly lost: (run: Run) => void;

  /**
   * @param ended is told what a run has found that nobody has cancelled
   * @param lost is told of a run that never will have found anything
   */
  constructor(
    engine: EngineClient,
    configs: KnownConfigs,
    ended: (run: Run, facts: CheckFacts) => void,
    lost: (run: Run) => void,
  ) {
    this.engine = engine;
    this.configs = configs;
    this.ended = ended;
    this.lost = lost;
  }

  get(key: string): Run | undefined {
    return this.runs.get(key);
  }

  /** Goes on with a run that reads the same; another of the same documents is cancelled. */
  start(input: CheckInput, wish: Wish): Run {
    const before = this.runs.get(input.key);
    const announced = wish.announced || (before?.wish.announced ?? false);
    if (before && isSameInput(before.input, input) && (before.wish.always || !wish.always)) {
      before.wish = { ...before.wish, announced };
      return before;
    }
    this.cancel(input.key);
    const run = this.begin(input, { always: wish.always, announced });
    this.runs.set(input.key, run);
    return run;
  }

  cancel(key: string): void {
    const run = this.runs.get(key);
    if (!run) return;
    run.cancelled = true;
    run.asked.cancel();
    this.runs.delete(key);
  }

  /** Nobody waits for the check of a text that has changed since. */
  cancelOutdated(documents: { get(uri: string): TextDocument | undefined }): void {
    for (const [key, { input }] of [...this.runs]) {
      const isOutdated = input.files.some(({ uri, version, open }) => {
        const live = documents.get(uri);
        return open ? live?.version !== version : live !== undefined;
      });
      if (isOutdated) this.cancel(key);
    }
  }

  private begin(input: CheckInput, wish: Wish): Run {
    const { key, files, config, project } = input;
    const read = config && { ...config, config: this.configs.read(config).config };
    const asked = this.engine.ask(
      { kind: 'check', key, files, config: read, project, always: wish.always },
      Priority.check,
    );
    const run: Run = { input, wish, cancelled: false, asked, outcome: Promise.resolve('lost') };
    run.outcome = asked.answer.then((facts) => this.settled(run, facts));
    return run;
  }

  private settled(run: Run, facts: CheckFacts | undefined): 'done' | 'cancelled' | 'lost' {
    if (this.runs.get(run.input.key) === run) this.runs.delete(run.input.key);
    if (run.cancelled) return 'cancelled';
    if (facts) this.ended(run, facts);
    else this.lost(run);
    return facts ? 'done' : 'lost';
  }
}
