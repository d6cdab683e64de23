/** The files of a project to their reports, as parts of one stack. */

import type { Config } from '../../config/types';
import type { LayerFault, ProjectReport, Report, Settings } from '../../report/report';
import { type StackLayer, stackOf } from '../../stack/stack';
import { now } from '../clock';
import { DEFAULT_BUDGET } from './check-file';
import { effectiveConfig, measuresAlike } from './effective-config';
import {
  type EntryGroup,
  faultOf,
  groupsOfEntry,
  projectFiles,
  type SourcedEntry,
  sourcedEntries,
} from './project-layers';
import { drawingOf, knownSheets, measureGroups, type ReadFile } from './read-sheets';
import { reportOn } from './run-checks';

/**
 * Checks the files that the configuration names in `layers`, each as a part of the whole stack. What is named but not
 * there is a fault; the rest is still checked.
 * @param files texts by the names that `projectFiles` gives; others are not looked at
 * @param earlier of an earlier state: files that are the same are not measured again, and of their checks only those
 * that look at other layers are run
 */
export function checkProject(
  files: ReadonlyMap<string, string>,
  settings: Settings,
  earlier?: ProjectReport,
): ProjectReport {
  const start = now();
  const config = effectiveConfig(settings);
  const names = projectFiles(config);
  const there = names.filter((name) => files.has(name));
  const late = () => now() - start > (settings.budget ?? DEFAULT_BUDGET) * Math.max(1, there.length);
  const alike = earlier !== undefined && measuresAlike(effectiveConfig(earlier.settings), config);
  const entries = sourcedEntries(config);
  const parts = new Map(
    there.map((name) => [
      name,
      readPart(name, files.get(name) ?? '', {
        settings,
        config,
        late,
        alike,
        earlier: earlier?.files.get(name),
        entries: entries.filter(({ file }) => file === name),
      }),
    ]),
  );
  const reports = new Map<string, Report>();
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
    missing: names.filter((name) => !files.has(name)),
  };
  for (const [file, part] of parts) {
    const known = part.unchanged?.results ?? [];
    const run = { settings, config, stack, late, known, project: { file, report: project } };
    reports.set(file, reportOn(part.read, run, part.elapsed));
  }
  project.elapsed = now() - start;
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
  readonly late: () => boolean;
  /** Whether the earlier report was measured as it would be now. */
  readonly alike: boolean;
  /** Those that name this file. */
  readonly entries: readonly SourcedEntry[];
  readonly earlier: Report | undefined;
}

function readPart(name: string, text: string, run: PartRun): Part {
  const start = now();
  const { settings, config, entries, earlier, alike } = run;
  const unchanged = earlier && alike && isUnchanged(name, text, run) ? earlier : undefined;
  const drawing = unchanged?.drawing ?? drawingOf(text, config, earlier?.drawing);
  const groups = entries.flatMap((entry) => groupsOfEntry(drawing, entry, settings.oneLayer));
  const painted = groups.map((group) => ({ ...group, paint: group.entry.paint }));
  const read = unchanged
    ? { text, drawing, sheets: unchanged.sheets, skipped: [] }
    : measureGroups(drawing, painted, config, knownSheets(earlier, alike), run.late);
  return { read, groups, unchanged, elapsed: now() - start };
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
  const faults = entries.map((entry) => faultOf(entry, parts.get(entry.file ?? '')?.read.drawing));
  return faults.filter((fault) => fault !== undefined);
}
