/** The language status of SVG documents: the size, the reading, and what was found. */
import * as vscode from 'vscode';
import type { Checked, Summary } from '../protocol/index';
import { formatDuration } from '../sheet/cutting-time';
import { isSvg, SVG } from './svg-documents';

export class StatusItem implements vscode.Disposable {
  private readonly item = vscode.languages.createLanguageStatusItem('tombolo.status', SVG);
  private readonly last = new Map<string, { checked: Checked; time: Date }>();
  private readonly listeners: vscode.Disposable[];

  constructor() {
    this.item.name = 'Tombolo';
    this.listeners = [
      vscode.window.onDidChangeActiveTextEditor(() => this.show()),
      vscode.workspace.onDidCloseTextDocument(({ uri }) => this.last.delete(uri.toString())),
    ];
    this.show();
  }

  update(checked: Checked): void {
    this.last.set(checked.uri, { checked, time: new Date() });
    this.show();
  }

  private show(): void {
    const document = vscode.window.activeTextEditor?.document;
    if (!document || !isSvg(document)) return;
    const known = this.last.get(document.uri.toString());
    void vscode.commands.executeCommand('setContext', 'tombolo.isStencil', known?.checked.stencil ?? false);
    if (known?.checked.summary) this.showSummary(known.checked.summary, known.time);
    else this.showNoStencil();
  }

  private showNoStencil(): void {
    this.item.text = 'Not a stencil';
    this.item.detail = 'nothing is checked';
    this.item.severity = vscode.LanguageStatusSeverity.Information;
    this.item.command = { title: 'Begin a Stencil Here', command: 'tombolo.begin' };
  }

  private showSummary(summary: Summary, time: Date): void {
    const { counts, readings, elapsed, cutTime } = summary;
    this.item.text = `${sizeOf(summary)}, read as ${readings.join(' and ') || 'nothing'}`;
    const cutting = cutTime === undefined ? '' : `; cutting takes ${formatDuration(cutTime)} at least`;
    this.item.detail = `${countsOf(counts)}${cutting}; ${elapsed.toFixed(0)} ms at ${time.toLocaleTimeString()}`;
    this.item.severity = vscode.LanguageStatusSeverity.Information;
    this.item.command = { title: 'Show Log', command: 'tombolo.showLog' };
  }

  dispose(): void {
    this.item.dispose();
    for (const listener of this.listeners) listener.dispose();
  }
}

function sizeOf({ width, height, sizeStated, layers }: Summary): string {
  const size = `${round(width)} × ${round(height)} mm${sizeStated ? '' : ' (not stated)'}`;
  return layers > 1 ? `${size}, ${layers} layers` : size;
}

const round = (millimetres: number): number => Math.round(millimetres * 10) / 10;

function countsOf(counts: Summary['counts']): string {
  const parts = (['error', 'warning', 'info'] as const).flatMap((severity) => {
    const count = counts[severity];
    if (count === 0) return [];
    return [`${count} ${severity}${count === 1 || severity === 'info' ? '' : 's'}`];
  });
  return parts.join(', ') || 'nothing found';
}
