/** `tombolo check --write-baseline`: what is found now is let pass from now on. */
import { applyEdits, modify } from 'jsonc-parser';
import type { Finding } from '../checks/finding';
import { CONFIG_NAME } from '../config/types';
import { baselineOf } from '../engine/index';
import { Failure } from './failure';
import type { LoadedConfig } from './files/find-config';
import type { LoadedReport } from './files/load-report';
import { writeAtomically } from './files/write-output';
import type { Host } from './host';
import { oneLine } from './plain-text';

/**
 * Writes the findings of each configuration's files into it, in place of the baseline that is there.
 * @throws Failure where a file has no configuration, or one that cannot be written
 */
export async function writeBaselines(reports: readonly LoadedReport[], host: Host): Promise<void> {
  const findings = new Map<LoadedConfig, Finding[]>();
  for (const { name, config, report } of reports) {
    if (config.path === undefined) throw new Failure(`${name}: has no ${CONFIG_NAME} to keep a baseline in`);
    findings.set(config, [...(findings.get(config) ?? []), ...report.complete]);
  }
  for (const [{ path = CONFIG_NAME, text, problems }, found] of findings) {
    const wrong = problems.some(({ severity }) => severity === 'error');
    if (wrong) throw new Failure(`${path}: has errors; fix those first`);
    const entries = baselineOf(found);
    await writeAtomically(path, withBaseline(text, entries));
    const many = entries.length === 1 ? 'finding is' : 'findings are';
    host.print(`${oneLine(path)}: ${entries.length} ${many} let pass from now on.\n`);
  }
}

/** The JSON text with this baseline, one entry a line; everything else stays as it is. */
export function withBaseline(text: string, entries: ReturnType<typeof baselineOf>): string {
  const value = entries.length === 0 ? undefined : entries;
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const formattingOptions = { insertSpaces: true, tabSize: 2, eol };
  const edits = modify(text.trim() === '' ? '{}' : text, ['baseline'], value, { formattingOptions });
  return applyEdits(text.trim() === '' ? '{}' : text, edits);
}
