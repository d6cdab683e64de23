/** Checked files made by hand, for the formats. */
import { pathToFileURL } from 'node:url';
import { createColors } from 'picocolors';
import { type CheckedFile, type PlacedFinding, summarize } from '../../src/format/checked-file';
import type { FormatInput } from '../../src/format/format';
import type { Range } from '../../src/format/ranges';

export function range(line: number, character: number, length: number, from: number): Range {
  return {
    start: { line, character },
    end: { line, character: character + length },
    from,
    to: from + length,
  };
}

export function finding(changes: Partial<PlacedFinding> = {}): PlacedFinding {
  return {
    check: 'thin-bridge',
    severity: 'warning',
    message: 'Bridge 0.42 mm wide; 0.80 mm is the least.',
    layer: 'ink',
    range: range(4, 12, 28, 210),
    at: { x: 31.2, y: 18.70001 },
    measure: { value: 0.420004, limit: 0.8, unit: 'mm' },
    related: [],
    mends: [],
    refusals: [],
    ...changes,
  };
}

export function file(findings: readonly PlacedFinding[], changes: Partial<CheckedFile> = {}): CheckedFile {
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return {
    path: 'heron.svg',
    size: { width: 148, height: 105, stated: true },
    layers: [
      {
        name: 'ink',
        reading: 'openings',
        paint: '#222222',
        openings: 12,
        openingArea: 2210.4,
        materialArea: 13329.6,
        islands: 2,
        cutLength: 843.2,
      },
    ],
    findings,
    counts,
    ...changes,
  };
}

export function input(files: readonly CheckedFile[], changes: Partial<FormatInput> = {}): FormatInput {
  return {
    files,
    summary: summarize(files),
    colours: createColors(false),
    folder: pathToFileURL(`${process.cwd()}/`).href,
    quiet: false,
    failures: [],
    passed: 0,
    ...changes,
  };
}
