/**
 * An engine that remembers: hosts that check the same files again and again make one, and ask it. All that it works out
 * is in one cache, by what it was worked out from.
 */
import type { ConfigReading } from '../config/read';
import type { ProjectReport, Report, Settings } from '../report/report';
import { hashOfText } from '../text/hash';
import { Cache, type CacheCount } from './cache/cache';
import { configNode } from './cache/nodes';
import { readConfig } from './check/known-checks';
import { DEFAULT_LIMIT, EngineSession } from './session';

export interface Engine {
  /**
   * Checks one file by itself.
   * @param document what is edited, as its address: its states follow one another
   * @throws Stopped when `settings.cancelled` says so
   */
  check(text: string, settings?: Settings, document?: string): Report;
  /**
   * Checks the files that the configuration names in `layers`, each as a part of the whole stack.
   * @param project what is edited, as the address of its `tombolo.json`
   * @throws Stopped when `settings.cancelled` says so
   */
  checkProject(files: ReadonlyMap<string, string>, settings: Settings, project?: string): ProjectReport;
  /** What the text of a `tombolo.json` says, read once for each text. */
  readConfig(text: string): ConfigReading;
  /** How often each kind of answer was there, and how often it had to be worked out. */
  counts(): ReadonlyMap<string, CacheCount>;
}

/** @param limit bytes, about, that the engine may remember; what was not asked for longest is forgotten first */
export function createEngine({ limit = DEFAULT_LIMIT }: { readonly limit?: number } = {}): Engine {
  const cache = new Cache(limit);
  return {
    check: (text, settings = {}, document = '') => new EngineSession(cache, document).check(text, settings),
    checkProject: (files, settings, project = '') => new EngineSession(cache, project).checkProject(files, settings),
    readConfig: (text) => cache.ask(configNode, { text, hash: hashOfText(text) }, () => readConfig(text)).value,
    counts: () => cache.counts(),
  };
}
