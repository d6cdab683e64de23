/** What is the same for a whole run of the engine. */

import type { Config } from '../../config/types';
import type { Session, Settings } from '../../report/report';
import { hashOfText } from '../../text/hash';
import type { Cache, Slot } from '../cache/cache';
import { effectiveConfig, measuringPart } from './effective-config';
import type { RunWatch } from './run-watch';

/** Where a run takes from what is known, and to whom its reports lead back. */
export interface Origin {
  readonly cache: Cache;
  /** What is edited: its states follow one another. */
  readonly document: string;
  /** Whether it is only tried what would come of it. */
  readonly trial: boolean;
  /** @param findings the number of the answer that the report shows */
  sessionFor(findings: number): Session;
}

export interface Run extends Origin {
  readonly settings: Settings;
  readonly watch: RunWatch;
  readonly config: Config;
  /** Stands for all of the configuration that measures and findings depend on. */
  readonly measuring: string;
}

export function beginRun(origin: Origin, settings: Settings, watch: RunWatch): Run {
  const config = effectiveConfig(settings);
  const { cache, document, trial, sessionFor } = origin;
  return {
    cache,
    document,
    trial,
    sessionFor,
    settings,
    watch,
    config,
    measuring: hashOfText(JSON.stringify(measuringPart(config))),
  };
}

/** @param name what is edited, within the document */
export function slotOf({ document, trial }: Run, name: string): Slot {
  return { name: `${document} ${name}`, trial };
}
