/** One check after the other, each of what there is when it begins; a change ends the round that it comes into. */
import { resolve } from 'node:path';
import { Writable } from 'node:stream';
import { createEngine } from '../../engine/index';
import { oneLine } from '../../format/plain-text';
import { runProgram } from '../../trace/run/run-program';
import { checkFiles } from '../check/check-files';
import { type CheckOptions, reportText } from '../check-command';
import { describeError } from '../failure';
import type { Host } from '../host';
import { checkRun } from '../trace/check-run';
import { PRELOADS } from '../trace/trace-command';
import { leaveMarks } from './leave-marks';
import { withPlannedBridges } from './put-bridges';
import type { Screen } from './screen';

/** Milliseconds: editors write a file in several steps, and several files one after the other. */
const SETTLING = 60;

export interface RoundsOptions {
  readonly paths: readonly string[];
  /** The program that draws, with its arguments; empty where there is none. */
  readonly program: readonly string[];
  readonly options: CheckOptions;
  readonly host: Host;
  readonly screen: Screen;
  /** Gets what each good run says of its drawings, before they are checked. */
  readonly marks?: string | undefined;
}

export class Rounds {
  private readonly wish: RoundsOptions;
  /** What one round has measured, the next one knows. */
  private readonly engine = createEngine();
  /** What the program wrote last: its own drawings are no reason to run it again. */
  private drawings: ReadonlySet<string> = new Set();
  private waiting: NodeJS.Timeout | undefined;
  private running: { readonly abort: AbortController; readonly done: Promise<void> } | undefined;
  /** Counts the rounds that were wanted: of those that wait for the same one to end, the last is run. */
  private turn = 0;
  private over = false;

  constructor(wish: RoundsOptions) {
    this.wish = wish;
  }

  begin(): void {
    this.changed(undefined);
  }

  /** @param file what has changed; undefined for everything */
  changed(file: string | undefined): void {
    if (file !== undefined && this.isDrawn(file)) return;
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => void this.next(), SETTLING);
  }

  /** Ends the round that runs, and the program with it. */
  async end(): Promise<void> {
    this.over = true;
    clearTimeout(this.waiting);
    this.running?.abort.abort();
    await this.running?.done;
  }

  /** While the program runs, it is the one who draws. */
  private isDrawn(file: string): boolean {
    if (this.wish.program.length === 0 || !/\.svg$/i.test(file)) return false;
    return this.running !== undefined || this.drawings.has(resolve(file));
  }

  private async next(): Promise<void> {
    const before = this.running;
    before?.abort.abort();
    this.turn += 1;
    const { turn } = this;
    await before?.done;
    if (this.over || turn !== this.turn) return;
    const abort = new AbortController();
    const done = this.round(abort.signal).catch((error: unknown) => {
      if (!abort.signal.aborted) this.wish.screen.remark(describeError(error, false));
    });
    const running = { abort, done };
    this.running = running;
    await done;
    if (this.running === running) this.running = undefined;
  }

  private async round(signal: AbortSignal): Promise<void> {
    const { host, options, screen } = this.wish;
    host.failures.length = 0;
    const files = await this.filesChecked(signal);
    if (files && !signal.aborted) screen.report(reportText(files, options, host));
  }

  /** Undefined where the program failed: what was found before still stands. */
  private async filesChecked(signal: AbortSignal) {
    const { paths, program, options, host, screen, marks } = this.wish;
    if (program.length === 0) return (await checkFiles(paths, options, host, { engine: this.engine })).files;
    const quiet = new Writable({ write: (_chunk, _encoding, done) => done() });
    const run = await runProgram({
      command: program,
      preloads: PRELOADS,
      stdout: quiet,
      stderr: process.stderr,
      signal,
    });
    if (signal.aborted) return undefined;
    this.drawings = new Set(run.outputs.map(({ file }) => resolve(file)));
    if (run.code === 0) {
      const drawn = await withPlannedBridges(run, options, host, this.engine);
      if (marks !== undefined) await leaveMarks(marks, drawn);
      return (await checkRun(drawn, options, host, this.engine)).checked;
    }
    screen.remark(`tombolo: ${oneLine(program.join(' '))} ended with ${run.code}; what was found before still stands`);
    return undefined;
  }
}
