/** The files of a project to their reports, as parts of one stack. */

import { now } from '../../base/clock';
import type { LayerFault, ProjectReport, Report, Settings } from '../../report/report';
import { layerId } from '../../sheet/layer/layer-id';
import { hashOfText } from '../../text/hash';
import type { Answer } from '../cache/cache';
import { effectiveConfig } from './effective-config';
import { faultOf, groupsOfEntry, projectFiles, type SourcedEntry, sourcedEntries } from './project-layers';
import { type LayerPlan, readFile } from './read-file';
import { beginRun, type Origin, type Run } from './run';
import { reportOn } from './run-checks';
import { RunWatch } from './run-watch';
import { type NamedSheet, settleSeams, stackFrom } from './stack-of-run';
import type { ReadFile } from './stages';
import { versionOf, versionOfStack } from './version';

/**
 * Checks the files that the configuration names in `layers`.
 * @param files texts by the names that `projectFiles` gives; others are not looked at
 * @throws Stopped when `settings.cancelled` says so
 */
export function checkFiles(origin: Origin, files: ReadonlyMap<string, string>, settings: Settings): ProjectReport {
  const { cancelled: _, ...kept } = settings;
  const names = projectFiles(effectiveConfig(settings));
  const there = names.flatMap((name) => {
    const text = files.get(name);
    return text === undefined ? [] : [{ name, text }];
  });
  const missing = names.filter((name) => !files.has(name));
  const watch = new RunWatch(settings, there.length);
  return watch.over(() => checkParts(beginRun(origin, kept, watch), there, missing));
}

interface NamedText {
  readonly name: string;
  readonly text: string;
}

/** A file of the project as it was read. */
interface Part {
  readonly file: Answer<ReadFile>;
  readonly version: string;
  /** Milliseconds */
  readonly elapsed: number;
}

function checkParts(run: Run, texts: readonly NamedText[], missing: readonly string[]): ProjectReport {
  const start = now();
  const { settings } = run;
  const entries = sourcedEntries(run.config);
  const parts = new Map(texts.map(({ name, text }) => [name, readPart(run, name, text, entries)]));
  const placed = entries.flatMap((entry) => sheetsOf(entry, entries, parts));
  const stack = stackFrom(run, placed);
  const stackVersion = versionOfStack(new Map([...parts].map(([name, { version }]) => [name, version])));
  const files = new Map<string, Report>();
  const project = {
    settings,
    files,
    stack: stack.value,
    missing,
    faults: faultsOf(entries, parts),
    session: run.sessionFor(stack.id),
    elapsed: 0,
  };
  for (const [name, { file, version, elapsed }] of parts) {
    const subject = { file, stack, version, stackVersion, project: { file: name, report: project } };
    files.set(name, reportOn(run, subject, elapsed));
  }
  settleSeams(run, placed);
  project.elapsed = now() - start;
  return project;
}

function readPart(run: Run, name: string, text: string, entries: readonly SourcedEntry[]): Part {
  const start = now();
  const hash = hashOfText(text);
  const own = entries.filter(({ file }) => file === name);
  const file = readFile(run, name, { text, hash }, planOf(run, name, own));
  return { file, version: versionOf(hash, run.settings), elapsed: now() - start };
}

/** @param entries those that name this file */
function planOf({ settings: { oneLayer = false } }: Run, name: string, entries: readonly SourcedEntry[]): LayerPlan {
  return {
    key: JSON.stringify([
      name,
      oneLayer,
      entries.map(({ from, name: called, paint, with: partner }) => [from, called, paint, partner]),
    ]),
    groupsOf: (drawing) =>
      entries
        .flatMap((entry, i) => groupsOfEntry(drawing, entry, oneLayer).map((group) => ({ ...group, entry: i })))
        .map((group, i) => {
          const { paint, with: partner } = entries[group.entry] ?? {};
          return { ...group, id: layerId(name, i), paint, with: group.with ?? partner };
        }),
  };
}

/** The sheets that an entry gives, as its file numbers them. */
function sheetsOf(
  entry: SourcedEntry,
  entries: readonly SourcedEntry[],
  parts: ReadonlyMap<string, Part>,
): NamedSheet[] {
  const { file: name } = entry;
  const part = name === undefined ? undefined : parts.get(name);
  if (name === undefined || !part) return [];
  const { file } = part;
  const own = entries.filter((other) => other.file === name).indexOf(entry);
  return file.value.origins.flatMap((origin, ordinal) => (origin.entry === own ? [{ file, ordinal, name }] : []));
}

function faultsOf(entries: readonly SourcedEntry[], parts: ReadonlyMap<string, Part>): LayerFault[] {
  const faults = entries.map((entry) => {
    const read = parts.get(entry.file ?? '')?.file.value;
    return read?.unread ? undefined : faultOf(entry, read?.drawing);
  });
  return faults.filter((fault) => fault !== undefined);
}
