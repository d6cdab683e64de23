/** The language status of SVG documents: what was found, how the drawing is read, and which `tombolo.json` is in force. */
import * as vscode from 'vscode';
import { count } from '../config/values';
import type { Checked, Summary } from '../protocol/index';
import { formatDuration } from '../sheet/cutting-time';
import { isSvg, SVG } from './svg-documents';

const { l10n, LanguageStatusSeverity, window } = vscode;

type Reading = Summary['readings'][number];

export class StatusItem implements vscode.Disposable {
  private readonly result = vscode.languages.createLanguageStatusItem('tombolo.status', SVG);
  private readonly reading = vscode.languages.createLanguageStatusItem('tombolo.reading', SVG);
  private config: vscode.LanguageStatusItem | undefined;
  private readonly last = new Map<string, Checked>();
  private readonly listeners: vscode.Disposable[];

  constructor() {
    this.result.name = 'Tombolo';
    this.reading.name = l10n.t('Tombolo: reading');
    this.listeners = [
      window.onDidChangeActiveTextEditor(() => this.show()),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => this.last.delete(uri.toString())),
    ];
    this.show();
  }

  update(checked: Checked): void {
    this.last.set(checked.uri, checked);
    this.show();
  }

  private show(): void {
    const document = window.activeTextEditor?.document;
    if (!document || !isSvg(document)) return;
    const known = this.last.get(document.uri.toString());
    this.config?.dispose();
    if (known?.summary) this.showSummary(known.summary);
    else this.showUnchecked(known !== undefined);
  }

  /** @param told whether the server has said that it is no stencil */
  private showUnchecked(told: boolean): void {
    const isManual = vscode.workspace.getConfiguration('tombolo').get('run') === 'manual';
    this.result.severity = LanguageStatusSeverity.Information;
    if (isManual && !told) {
      this.result.text = l10n.t('Not checked yet');
      this.result.detail = '';
      this.result.command = { title: l10n.t('Check Now'), command: 'tombolo.checkAgain' };
    } else {
      this.result.text = l10n.t('Not a stencil, nothing is checked');
      this.result.detail = '';
      this.result.command = { title: l10n.t('Set Up as Stencil…'), command: 'tombolo.begin' };
    }
    this.reading.text = 'Tombolo';
    this.reading.detail = '';
  }

  private showSummary(summary: Summary): void {
    const { readings, elapsed, cutTime, config } = summary;
    const doubt = doubtOf(summary);
    this.result.text = countsOf(summary);
    this.result.detail = doubt;
    this.result.severity = doubt ? LanguageStatusSeverity.Warning : LanguageStatusSeverity.Information;
    this.result.command = { title: l10n.t('Show Log'), command: 'tombolo.showLog' };
    this.reading.text = sizeOf(summary);
    const read = readings.map(readingText).join(', ') || l10n.t('nothing to cut');
    const cut = cutTime === undefined ? '' : `; ${l10n.t('cut in {0} or more', formatDuration(cutTime))}`;
    this.reading.detail = `${read}${cut}; ${elapsed.toFixed(0)} ms`;
    if (config !== undefined) this.showConfig(config, summary.configErrors ?? 0);
  }

  /** Each has a place of its own in the list, and is gone where none is in force. */
  private showConfig(uri: string, errors: number): void {
    const item = vscode.languages.createLanguageStatusItem('tombolo.config', SVG);
    item.name = l10n.t('Tombolo: configuration');
    item.text = vscode.workspace.asRelativePath(vscode.Uri.parse(uri));
    item.detail = errors > 0 ? l10n.t('{0} in it', count(errors, 'error')) : '';
    item.severity = errors > 0 ? LanguageStatusSeverity.Warning : LanguageStatusSeverity.Information;
    item.command = { title: l10n.t('Open'), command: 'tombolo.openConfig', arguments: [uri] };
    this.config = item;
  }

  dispose(): void {
    for (const each of [this.result, this.reading, this.config, ...this.listeners]) each?.dispose();
  }
}

/** Why the counts are not the whole truth; empty where they are. */
function doubtOf({ unfinished, outdated }: Summary): string {
  if (outdated) return l10n.t('not up to date: the check of the present text stopped');
  return unfinished ? l10n.t('not finished: too much to check in one run') : '';
}

function sizeOf({ width, height, sizeStated, sizeInConfig, layers }: Summary): string {
  const stated = sizeStated ? '' : ` (${l10n.t('not stated')})`;
  const source = sizeInConfig ? ` (${l10n.t('from tombolo.json')})` : stated;
  const size = `${round(width)} × ${round(height)} mm${source}`;
  return layers > 1 ? `${size}, ${l10n.t('{0} layers', layers)}` : size;
}

const round = (millimetres: number): number => Math.round(millimetres * 10) / 10;

function readingText(reading: Reading): string {
  if (reading === 'sheet') return l10n.t('filled = what stays');
  return reading === 'outlines' ? l10n.t('lines are cut') : l10n.t('filled = cut out');
}

function countsOf({ counts, leftOut = 0 }: Summary): string {
  const parts = (['error', 'warning', 'info', 'hint'] as const).flatMap((severity) => {
    const number = counts[severity];
    if (number === 0) return [];
    return [severity === 'info' ? `${number} info` : count(number, severity)];
  });
  const listed = parts.join(', ') || l10n.t('nothing found');
  return leftOut > 0 ? l10n.t('{0}, and {1} more not listed', listed, leftOut) : listed;
}
