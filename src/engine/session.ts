/** The engine as its reports lead back to it: with one cache for all that it works out. */
import type { ProjectReport, Report, Session, Settings } from '../report/report';
import { Cache } from './cache/cache';
import { proofNode } from './cache/nodes';
import { checkFiles } from './check/check-files';
import { checkText } from './check/check-text';
import type { Origin } from './check/run';

/**
 * Bytes, about, that a cache holds at most: some states of a sheet as large as any that a person draws. It is counted
 * as if answers had nothing in common, so that less is used.
 */
export const DEFAULT_LIMIT = 128 * 2 ** 20;

export class EngineSession implements Session {
  readonly #cache: Cache;
  readonly #document: string;
  readonly #basis: number;

  /**
   * @param document what is edited: its states follow one another
   * @param basis the number of the answer that `remember` is about
   */
  constructor(cache: Cache, document: string, basis = 0) {
    this.#cache = cache;
    this.#document = document;
    this.#basis = basis;
  }

  check(text: string, settings: Settings, trial = false): Report {
    return checkText(this.#origin(trial), text, settings);
  }

  checkProject(files: ReadonlyMap<string, string>, settings: Settings, trial = false): ProjectReport {
    return checkFiles(this.#origin(trial), files, settings);
  }

  remember<Value>(what: string, compute: () => Value): Value {
    return this.#cache.ask(proofNode, { findings: this.#basis, what }, compute).value as Value;
  }

  #origin(trial: boolean): Origin {
    const [cache, document] = [this.#cache, this.#document];
    return { cache, document, trial, sessionFor: (findings) => new EngineSession(cache, document, findings) };
  }
}

/** With a cache of its own, which lives as long as a report of the session. */
export function beginSession(): Session {
  return new EngineSession(new Cache(DEFAULT_LIMIT), '');
}
