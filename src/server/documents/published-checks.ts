/** The last published check of each stencil, and of each file of a project: what the editor shows of it. */
import type { ConfigProblem } from '../../config/read';
import type { CheckedFile } from '../../protocol/engine-worker';
import type { CheckerOutput, DrawnFiles, OpenDocuments } from './checker-surroundings';
import { configNotice } from './config-notice';
import { diagnosticOf } from './diagnostics';
import type { KnownConfigs } from './known-configs';
import type { KnownDocument } from './known-document';
import { lostNotice } from './lost-checks';
import type { ServerSettings } from './settings';

export class PublishedChecks {
  private readonly checks = new Map<string, KnownDocument>();
  /** Documents whose text could not be checked: what is shown of them is old. */
  private readonly old = new Set<string>();

  private readonly documents: OpenDocuments;
  private readonly configs: KnownConfigs;
  private readonly programs: DrawnFiles;
  private readonly outlet: CheckerOutput;

  constructor(documents: OpenDocuments, configs: KnownConfigs, programs: DrawnFiles, outlet: CheckerOutput) {
    this.documents = documents;
    this.configs = configs;
    this.programs = programs;
    this.outlet = outlet;
  }

  get(uri: string): KnownDocument | undefined {
    return this.checks.get(uri);
  }

  all(): KnownDocument[] {
    return [...this.checks.values()];
  }

  show(known: KnownDocument): void {
    const { uri, version, facts } = known;
    const { open, findings, summary } = facts;
    const configErrors = this.configErrors(known);
    this.checks.set(uri, known);
    this.old.delete(uri);
    const atPrograms = this.programs.show(known);
    // In a closed drawing nobody looks for what its program's lines show.
    const shown = open ? findings : findings.filter(({ id }) => !atPrograms.has(id));
    this.outlet.diagnostics(uri, open ? version : undefined, [
      ...configNotice(known, configErrors),
      ...shown.map((finding) => diagnosticOf(finding, known, this.outlet.pageOf)),
    ]);
    const told = { ...summary, configErrors: configErrors.length };
    if (open || this.programs.isDrawn(uri)) this.outlet.checked({ uri, version, stencil: true, summary: told });
    this.outlet.log(`${uri}: ${findings.length} findings in ${summary.elapsed.toFixed(0)} ms`);
  }

  /** Its present text could not be checked: what was found in an earlier one stays, and that is said. */
  showOld(uri: string): void {
    const live = this.documents.get(uri);
    if (!live) return;
    const known = this.checks.get(uri);
    const { findings = [], summary } = known?.facts ?? {};
    this.old.add(uri);
    this.outlet.diagnostics(uri, live.version, [
      lostNotice(live, known !== undefined),
      ...findings.flatMap((finding) => (known ? diagnosticOf(finding, known, this.outlet.pageOf, live) : [])),
    ]);
    if (summary) {
      this.outlet.checked({ uri, version: live.version, stencil: true, summary: { ...summary, outdated: true } });
    }
  }

  /** It is no stencil: nothing is shown of it any more. */
  showPlain({ uri, version, open }: Pick<CheckedFile, 'uri' | 'version' | 'open'>): void {
    if (this.drop(uri)) this.outlet.diagnostics(uri, open ? version : undefined, []);
    if (open) this.outlet.checked({ uri, version, stencil: false });
  }

  clear(uri: string): void {
    if (this.drop(uri)) this.outlet.diagnostics(uri, undefined, []);
  }

  /** From now on, findings are as serious as the settings say. */
  remap(severity: ServerSettings['severity']): void {
    for (const known of this.all()) {
      if (!known.remap(severity)) continue;
      if (this.old.has(known.uri)) this.showOld(known.uri);
      else this.show(known);
    }
  }

  /** What in the `tombolo.json` in force was not taken. */
  configErrors({ config, project }: KnownDocument): ConfigProblem[] {
    if (!config) return [];
    const problems = [...this.configs.read(config).problems, ...(project?.problems() ?? [])];
    return problems.filter(({ severity }) => severity === 'error');
  }

  /** @returns whether something was shown */
  private drop(uri: string): boolean {
    const [wasKnown, wasOld] = [this.checks.delete(uri), this.old.delete(uri)];
    this.programs.drop(uri);
    return wasKnown || wasOld;
  }
}
