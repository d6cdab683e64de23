/** `--statistics`: how often each check found something. */
import type { CheckedFile } from '../../format/checked-file';
import { type Column, tableLines } from '../../format/table';

interface Row {
  readonly check: string;
  readonly findings: number;
  readonly files: number;
}

const COLUMNS: readonly Column<Row>[] = [
  { heading: 'findings', align: 'right', cell: ({ findings }) => String(findings) },
  { heading: 'files', align: 'right', cell: ({ files }) => String(files) },
  { heading: 'check', align: 'left', cell: ({ check }) => check },
];

/** A table, the most frequent first; empty where nothing was listed. */
export function statisticsOf(files: readonly CheckedFile[]): string {
  const rows = new Map<string, Row>();
  for (const { findings } of files) {
    const told = new Map<string, number>();
    for (const { check } of findings) told.set(check, (told.get(check) ?? 0) + 1);
    for (const [check, many] of told) {
      const row = rows.get(check) ?? { check, findings: 0, files: 0 };
      rows.set(check, { check, findings: row.findings + many, files: row.files + 1 });
    }
  }
  if (rows.size === 0) return '';
  const sorted = [...rows.values()].sort((a, b) => b.findings - a.findings || (a.check < b.check ? -1 : 1));
  return `${tableLines(COLUMNS, sorted).join('\n')}\n`;
}
