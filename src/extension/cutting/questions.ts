/** What the artist is asked before files for the cutter are written. Escape at any question ends it all. */
import { l10n, type QuickPickItem, Uri, window } from 'vscode';
import { count, parseLength } from '../../config/values';
import type { CutFilesParams, SheetMarks } from '../../protocol/cutting';
import { oneLine } from '../../text/plain-text';
import { withUnit } from '../setup/lengths';

type Format = CutFilesParams['as'][number];

export type CutAnswers = Pick<CutFilesParams, 'as' | 'kerf' | 'marks'>;

/** @param kerf mm that the project says the files have to allow for */
export async function askForCut(kerf: number): Promise<CutAnswers | undefined> {
  const formats = await askFormats();
  if (!formats || formats.length === 0) return undefined;
  const width = await askKerf(kerf);
  if (width === undefined) return undefined;
  const marks = await askMarks();
  return marks && { as: formats, kerf: width, marks };
}

async function askFormats(): Promise<Format[] | undefined> {
  const items: (QuickPickItem & { readonly format: Format })[] = [
    { format: 'svg', label: 'SVG', picked: true, description: l10n.t('in mm: red is cut, blue is drawn') },
    { format: 'pdf', label: 'PDF', description: l10n.t('at true size, also to be cut by hand') },
    { format: 'dxf', label: 'DXF', description: l10n.t('in mm, arcs as arcs') },
  ];
  const picked = await window.showQuickPick(items, {
    title: l10n.t('Write cut files (1 of 4): formats'),
    placeHolder: l10n.t('Which does your cutter read?'),
    canPickMany: true,
    ignoreFocusOut: true,
  });
  return picked?.map(({ format }) => format);
}

async function askKerf(kerf: number): Promise<number | undefined> {
  const answer = await window.showInputBox({
    title: l10n.t('Write cut files (2 of 4): kerf'),
    prompt: l10n.t('Width that the tool takes away, such as 0.1mm. With 0 your program or machine allows for it.'),
    value: kerf === 0 ? '0' : `${kerf}mm`,
    ignoreFocusOut: true,
    validateInput: (text) =>
      kerfFrom(text) === undefined ? l10n.t('Enter a length from 0 to 5 mm, such as 0.1mm.') : undefined,
  });
  return answer === undefined ? undefined : kerfFrom(answer);
}

/** mm; undefined where it is no width that a tool can have. */
function kerfFrom(text: string): number | undefined {
  const width = /^\s*0*\s*$/.test(text) ? 0 : parseLength(withUnit(text));
  return width !== undefined && width >= 0 && width <= 5 ? width : undefined;
}

async function askMarks(): Promise<SheetMarks | undefined> {
  const items: (QuickPickItem & { readonly marks: SheetMarks })[] = [
    {
      marks: 'none',
      label: l10n.t('Nothing'),
      description: l10n.t('openings and the edge alone'),
    },
    {
      marks: 'labels',
      label: l10n.t('Labels'),
      description: l10n.t('for a pen or engraving'),
      detail: l10n.t('Which way is up, the number of how many, name and paint, in single lines.'),
    },
    {
      marks: 'notches',
      label: l10n.t('Notches in the edge'),
      description: l10n.t('for tools that only cut'),
      detail: l10n.t('Pointed ones tell the number, square ones of how many; a sheet laid face down is seen.'),
    },
  ];
  const picked = await window.showQuickPick(items, {
    title: l10n.t('Write cut files (3 of 4): marks'),
    placeHolder: l10n.t('How shall the sheets be told apart?'),
    ignoreFocusOut: true,
  });
  return picked?.marks;
}

/** Where the files of a drawing go unless the artist says otherwise. */
const USUAL = 'cut';

/** @param title of the question */
export async function askFolder(document: Uri, title: string): Promise<Uri | undefined> {
  const beside = Uri.joinPath(document, '..', USUAL);
  const usual = { label: USUAL, description: l10n.t('beside the drawing'), folder: beside };
  const other = { label: l10n.t('Another folder…'), folder: undefined };
  const picked = await window.showQuickPick([usual, other], {
    title,
    placeHolder: l10n.t('Into which folder?'),
    ignoreFocusOut: true,
  });
  if (picked !== other) return picked?.folder;
  const chosen = await window.showOpenDialog({
    title,
    openLabel: l10n.t('Write Here'),
    canSelectFiles: false,
    canSelectFolders: true,
    defaultUri: Uri.joinPath(document, '..'),
  });
  return chosen?.[0];
}

/** Whether it shall be cut with errors left. */
export async function wantsAnyway(errors: number, first: string | undefined): Promise<boolean> {
  const said = errors === 1 ? l10n.t('1 error is left.') : l10n.t('{0} are left.', count(errors, 'error'));
  const detail = [
    ...(first === undefined ? [] : [l10n.t('First: {0}', oneLine(first))]),
    l10n.t('What is cut with errors may fall apart, or be cut for nothing. The findings show them all.'),
  ].join('\n\n');
  const write = l10n.t('Write Anyway');
  return (await window.showWarningMessage(said, { modal: true, detail }, write)) === write;
}
