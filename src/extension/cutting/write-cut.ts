/** Files for the cutter, and the page that hangs at the wall, from the bench or the palette. */
import * as vscode from 'vscode';
import { count } from '../../config/values';
import type { FilesToWrite } from '../../protocol/cutting';
import { formatDuration } from '../../sheet/cutting-time';
import { noticeText } from '../../text/notice';
import type { ServerClient } from '../server-client';
import { askFolder, askForCut, wantsAnyway } from './questions';
import { writeFiles } from './write-files';

const { l10n, window } = vscode;

/** Checked before anything is asked: with errors left it says so, and asks. */
export async function writeCutFiles(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const [checked, figures] = await Promise.all([
    client.cutFiles(uri, { as: [], kerf: 0, marks: 'none', anyway: false }),
    client.cutFigures(uri),
  ]);
  if (!checked || !figures) return;
  if (figures.sheets.length === 0) {
    void window.showInformationMessage(l10n.t('There is nothing to cut yet.'));
    return;
  }
  const anyway = checked.errors > 0;
  if (anyway && !(await wantsAnyway(checked.errors, checked.first))) return;
  const answers = await askForCut(figures.kerf);
  if (!answers) return;
  const folder = await askFolder(uri, l10n.t('Write cut files (4 of 4): folder'));
  if (!folder) return;
  const written = await client.cutFiles(uri, { ...answers, anyway });
  if (!written) return;
  if (written.files.length === 0) {
    // The drawing has changed while the questions were open.
    void window.showWarningMessage(
      l10n.t('Nothing was written: {0} came up meanwhile.', count(written.errors, 'error')),
    );
    return;
  }
  for (const note of written.notes) client.log.warn(note);
  if (await put(folder, written)) tellCut(folder, written, client);
}

export async function writeJob(uri: vscode.Uri, client: ServerClient): Promise<void> {
  const pages = await client.jobFiles(uri);
  if (!pages) return;
  const folder = await askFolder(uri, l10n.t('Page for the wall: folder'));
  if (!folder || !(await put(folder, pages))) return;
  const left = pages.errors === 0 ? '' : ` ${l10n.t('Mind that {0} left.', areLeft(pages.errors))}`;
  void window.showInformationMessage(
    noticeText(l10n.t('The page for the wall is in {0}, as job.html and job.pdf.', nameOf(folder)) + left),
  );
}

async function put(folder: vscode.Uri, { files }: FilesToWrite): Promise<boolean> {
  const refusal = await writeFiles(folder, files);
  if (refusal === undefined) return true;
  void window.showErrorMessage(noticeText(l10n.t('Nothing was written: {0}', refusal)));
  return false;
}

function tellCut(folder: vscode.Uri, written: FilesToWrite, client: ServerClient): void {
  const { files, seconds, notes, cautions } = written;
  const told = [
    l10n.t('{0} in {1}.', count(files.length, 'cut file'), nameOf(folder)),
    ...(seconds === undefined ? [] : [l10n.t('Cutting takes about {0}.', formatDuration(seconds))]),
    ...cautions,
  ].join(' ');
  const show = notes.length === 0 ? [] : [l10n.t('Show {0}', count(notes.length, 'note'))];
  void window.showInformationMessage(noticeText(told), ...show).then((chosen) => {
    if (chosen !== undefined) client.log.show();
  });
}

const areLeft = (errors: number): string => `${count(errors, 'error')} ${errors === 1 ? 'is' : 'are'}`;

const nameOf = (folder: vscode.Uri): string => folder.path.split('/').at(-1) ?? '';
