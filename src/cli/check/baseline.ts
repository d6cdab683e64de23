/** The baseline in `tombolo.json`: what was found before and is let pass, written and looked after. */
import { applyEdits, modify } from 'jsonc-parser';
import { type BaselineEntry, CONFIG_NAME } from '../../config/types';
import { count } from '../../config/values';
import { baselineOf } from '../../engine/index';
import { oneLine } from '../../format/plain-text';
import { Failure } from '../failure';
import type { LoadedConfig } from '../files/find-config';
import { nameBeside } from '../files/load-project';
import type { LoadedReport } from '../files/load-report';
import { writeAtomically } from '../files/write-output';
import type { Host } from '../host';
import { type FileOutcome, isAmong } from './file-check';

/** What the baselines of a run did. */
export interface BaselineUse {
  /** Findings that were let pass. */
  readonly passed: number;
  /** By configuration, the entries for the files of the run that let nothing pass any more. */
  readonly stale: ReadonlyMap<LoadedConfig, readonly BaselineEntry[]>;
}

/**
 * @param outcomes of all files of the run
 * @param configs that hold for them, and others
 */
export function baselineUse(outcomes: readonly FileOutcome[], configs: Iterable<LoadedConfig>): BaselineUse {
  const passed = outcomes.reduce((sum, outcome) => sum + outcome.passed.count, 0);
  const stale = new Map<LoadedConfig, readonly BaselineEntry[]>();
  for (const config of configs) {
    const own = outcomes.filter(({ configPath }) => configPath === config.path);
    const files = new Set(own.map(({ name }) => nameBeside(config, name)));
    const used = own.flatMap((outcome) => outcome.passed.entries);
    const idle = config.config.baseline.filter(
      (entry) => entry.file !== undefined && files.has(entry.file) && !isAmong(entry, used),
    );
    if (idle.length > 0) stale.set(config, idle);
  }
  return { passed, stale };
}

/** One line for each configuration whose baseline lets pass what is not found any more. */
export function sayStale({ stale }: BaselineUse, host: Host): void {
  for (const [{ path = CONFIG_NAME }, entries] of stale) {
    const [many, match, them] = entries.length === 1 ? ['entry', 'matches', 'it'] : ['entries', 'match', 'them'];
    const told = `${entries.length} ${many} of the baseline ${match} nothing any more`;
    host.say(`${oneLine(path)}: ${told}; tombolo check --write-baseline takes ${them} out`);
  }
}

/**
 * Writes the findings of each configuration's files into it. Entries for files that are not of this run stay; those
 * that name no file give way to entries that do.
 * @throws Failure where a file has no configuration, or one that cannot be written
 */
export async function writeBaselines(reports: readonly LoadedReport[], host: Host): Promise<void> {
  for (const [config, own] of byConfig(reports)) {
    const { path, text, problems } = config;
    if (path === undefined) throw new Failure(`${own[0]?.name}: has no ${CONFIG_NAME} to keep a baseline in`);
    const wrong = problems.some(({ severity }) => severity === 'error');
    if (wrong) throw new Failure(`${path}: has errors; fix those first`);
    const entries = merged(config, own);
    await writeAtomically(path, withBaseline(text, entries));
    const are = entries.length === 1 ? 'is' : 'are';
    host.print(`${oneLine(path)}: ${count(entries.length, 'finding')} ${are} let pass from now on.\n`);
  }
}

function merged(config: LoadedConfig, reports: readonly LoadedReport[]): BaselineEntry[] {
  const fresh = reports.flatMap(({ name, report }) => baselineOf(report.complete, nameBeside(config, name)));
  const files = new Set(reports.map(({ name }) => nameBeside(config, name)));
  const found = new Set(fresh.map(withoutFile));
  const kept = config.config.baseline.filter((entry) =>
    entry.file === undefined ? !found.has(withoutFile(entry)) : !files.has(entry.file),
  );
  return [...kept, ...fresh];
}

const withoutFile = ({ check, layer, at }: BaselineEntry): string => JSON.stringify([check, layer, at]);

function byConfig(reports: readonly LoadedReport[]): Map<LoadedConfig, LoadedReport[]> {
  const groups = new Map<LoadedConfig, LoadedReport[]>();
  for (const report of reports) groups.set(report.config, [...(groups.get(report.config) ?? []), report]);
  return groups;
}

/** The JSON text with this baseline, one entry a line; everything else stays as it is. */
export function withBaseline(text: string, entries: readonly BaselineEntry[]): string {
  const value = entries.length === 0 ? undefined : entries;
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const formattingOptions = { insertSpaces: true, tabSize: 2, eol };
  const edits = modify(text.trim() === '' ? '{}' : text, ['baseline'], value, { formattingOptions });
  return applyEdits(text.trim() === '' ? '{}' : text, edits);
}
