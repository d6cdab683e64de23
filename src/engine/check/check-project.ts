/** The files of a project to their reports, as parts of one stack. */
import { underWatch } from '../../geometry/base/checkpoint';
import type { LayerFault, ProjectReport, Report, Settings } from '../../report/report';
import type { Config } from '../../config/types';
import { layerId } from '../../sheet/layer/layer-id';
import { stackOf, type StackLayer } from '../../stack/stack';
import {
  faultOf,
  groupsOfEntry,
  projectFiles,
  sourcedEntries,
  type EntryGroup,
  type SourcedEntry,
} from './project-layers';
import { knownSheets, measureGroups, readText, type ReadFile } from './read-sheets';
import { reportOn } from './run-checks';
import { watchOf } from './run-watch';
import { versionOf, versionOfStack } from './version';
import { effectiveConfig, measuresAlike } from './effective-config';

/**
 * Checks the files that the configuration names in `layers`, each as a part of the whole stack. What is named but not
 * there is a fault; the rest is still checked.
 * @param files texts by the names that `projectFiles` gives; others are not looked at
 * @param earlier of an earlier state: files that are the same are not measured again, and of their checks only those
 * that look at other layers are run
 * @throws Stopped when `settings.cancelled` says so
 */
export function checkProject(
  files: ReadonlyMap<string, string>,
  settings: Settings,
  earlier?: ProjectReport,
): ProjectReport {
  const { cancelled: _, ...kept } = settings;
  const there = projectFiles(effectiveConfig(settings)).filter((name) => files.has(name));
  return underWatch(watchOf(settings, there.length), () => checkFiles(there, files, kept, earlier));
}

/** @param there the files of the project that there are */
function checkFiles(
  there: readonly string[],
  files: ReadonlyMap<string, string>,
  settings: Settings,
  earlier: ProjectReport | undefined,
): ProjectReport {
  const start = performance.now();
  const config = effectiveConfig(settings);
  const alike = earlier !== undefined && measuresAlike(effectiveConfig(earlier.settings), config);
  const entries = sourcedEntries(config);
  const parts = new Map(
    there.map((name) => [
      name,
      readPart(name, files.get(name) ?? '', {
        settings,
        config,
        alike,
        earlier: earlier?.files.get(name),
        entries: entries.filter(({ file }) => file === name),
      }),
    ]),
  );
  const reports = new Map<string, Report>();
  const versions = new Map([...parts].map(([file, { read }]) => [file, versionOf(read.text, settings)]));
  const stackVersion = versionOfStack(versions);
  const stack = stackOf(
    entries.flatMap((entry) => layersOf(entry, parts)),
    earlier?.stack,
  );
  const project = {
    settings,
    files: reports,
    stack,
    faults: faultsOf(entries, parts),
    elapsed: 0,
    missing: projectFiles(config).filter((name) => !files.has(name)),
  };
  for (const [file, part] of parts) {
    const known = part.unchanged?.results ?? [];
    const version = versions.get(file) ?? '';
    const run = { settings, config, stack, version, stackVersion, known, project: { file, report: project } };
    reports.set(file, reportOn(part.read, run, part.elapsed));
  }
  project.elapsed = performance.now() - start;
  return project;
}

/** A file of the project as it was read. */
interface Part {
  readonly read: ReadFile;
  /** One for each sheet. */
  readonly groups: readonly EntryGroup[];
  /** The earlier report, where text and layers are the same. */
  readonly unchanged: Report | undefined;
  /** Milliseconds */
  readonly elapsed: number;
}

interface PartRun {
  readonly settings: Settings;
  readonly config: Config;
  /** Whether the earlier report was measured as it would be now. */
  readonly alike: boolean;
  /** Those that name this file. */
  readonly entries: readonly SourcedEntry[];
  readonly earlier: Report | undefined;
}

function readPart(name: string, text: string, run: PartRun): Part {
  const start = performance.now();
  const { settings, config, entries, earlier, alike } = run;
  const unchanged = earlier && alike && isUnchanged(name, text, run) ? earlier : undefined;
  const known = unchanged && { drawing: unchanged.drawing, unread: undefined };
  const readable = known ?? readText(text, config, earlier?.drawing);
  const groups = entries
    .flatMap((entry) => groupsOfEntry(readable.drawing, entry, settings.oneLayer))
    .map((group, i) => ({ ...group, id: layerId(name, i) }));
  const painted = groups.map((group) => ({ ...group, paint: group.entry.paint }));
  const read = unchanged
    ? { ...readable, text, sheets: unchanged.sheets, skipped: [] }
    : measureGroups(readable, painted, config, knownSheets(earlier, alike));
  const skipped = new Set(read.skipped.map(({ group }) => group));
  return { read, groups: groups.filter((_, i) => !skipped.has(i)), unchanged, elapsed: performance.now() - start };
}

function isUnchanged(name: string, text: string, { settings, entries, earlier }: PartRun): boolean {
  if (earlier?.text !== text || earlier.complete.some(({ check }) => check === 'unfinished')) return false;
  const before = sourcedEntries(effectiveConfig(earlier.settings)).filter(({ file }) => file === name);
  return (
    earlier.settings.oneLayer === settings.oneLayer &&
    entries.length === before.length &&
    entries.every(
      ({ from, name: called, paint }, i) =>
        from === before[i]?.from && called === before[i]?.name && paint === before[i]?.paint,
    )
  );
}

function layersOf({ index, file }: SourcedEntry, parts: ReadonlyMap<string, Part>): StackLayer[] {
  const part = file === undefined ? undefined : parts.get(file);
  if (file === undefined || !part) return [];
  return part.read.sheets.flatMap((sheet, i) => (part.groups[i]?.entry.index === index ? [{ file, sheet }] : []));
}

function faultsOf(entries: readonly SourcedEntry[], parts: ReadonlyMap<string, Part>): LayerFault[] {
  const faults = entries.map((entry) => {
    const read = parts.get(entry.file ?? '')?.read;
    return read?.unread ? undefined : faultOf(entry, read?.drawing);
  });
  return faults.filter((fault) => fault !== undefined);
}
