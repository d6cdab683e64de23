/** `tombolo bridge --two-sheets`: into the file itself, or as two files with their project. */
import { join } from 'node:path';
import { parse } from 'jsonc-parser';
import { CONFIG_NAME } from '../config/types';
import { count } from '../config/values';
import { bridgeAsTwoFiles, bridgeAsTwoLayers, type Sheet, type TwoSheetsOutcome } from '../engine/index';
import { Failure } from './failure';
import type { LoadedReport } from './files/load-report';
import { encodeText, readInput } from './files/read-input';
import { makeFolder } from './files/write-folder';
import { writeAtomically } from './files/write-output';

/** Which layers, and how wide a bridge in mm. */
interface TwoSheetsChoice {
  readonly layer?: string;
  readonly bridgeWidth?: number;
}

/** What came of it: the changed text, where it goes back into its file, and what is told. */
export interface TwoSheetsWork extends TwoSheetsOutcome {
  readonly text: string | undefined;
  readonly done: string;
}

const [FIRST, SECOND] = ['first.svg', 'second.svg'];

export function twoLayers({ report }: LoadedReport, choice: TwoSheetsChoice): TwoSheetsWork {
  const outcome = bridgeAsTwoLayers(report, choice);
  return { ...outcome, done: doneOf(outcome) };
}

/**
 * Writes the two sheets into a folder, and the `tombolo.json` that makes one stack of them.
 * @throws Failure when the folder holds another project, or cannot be written
 */
export async function writeTwoFiles(
  loaded: LoadedReport,
  choice: TwoSheetsChoice,
  folder: string,
): Promise<TwoSheetsWork> {
  const outcome = bridgeAsTwoFiles(loaded.report, choice);
  if (outcome.layers.length > 0) {
    const config = projectText(loaded, outcome);
    const files = { [FIRST]: outcome.first, [SECOND]: outcome.second };
    await refuseOtherProject(folder);
    await makeFolder(folder);
    for (const [name, text] of Object.entries(files)) {
      await writeAtomically(join(folder, name), encodeText(text, loaded.input.encoding));
    }
    await writeAtomically(join(folder, CONFIG_NAME), config);
  }
  return { ...outcome, text: undefined, done: doneOf(outcome) };
}

function doneOf({ layers }: TwoSheetsOutcome): string {
  if (layers.length === 0) return 'no layer became two sheets';
  const told = layers.map(({ sheet, first, second }) => {
    return `"${sheet.layer.name}" is two sheets now, with ${count(first.length, 'bridge')} and ${second.length}`;
  });
  return `${told.join('; ')}. Expect one coat of paint in the shadows of bridges, two elsewhere`;
}

/** All that the configuration says, with the layers of the two files instead of its own. */
function projectText({ name, report, config, settings }: LoadedReport, { layers }: TwoSheetsOutcome): string {
  const { baseline: _, layers: __, ...kept } = (parse(config.text) ?? {}) as Record<string, unknown>;
  const size = settings.width === undefined ? {} : { size: { width: `${settings.width}mm` } };
  const entries = report.sheets.flatMap((sheet) => {
    const doubled = layers.some((each) => each.sheet === sheet);
    const first = entryOf(name, report.sheets, sheet, FIRST);
    if (!doubled) return [first];
    const second = entryOf(name, report.sheets, sheet, SECOND);
    return [first, { ...second, name: `${first.name} (second sheet)`, with: first.name }];
  });
  return `${JSON.stringify({ ...kept, ...size, layers: entries }, undefined, 2)}\n`;
}

function entryOf(name: string, sheets: readonly Sheet[], { layer }: Sheet, file: string) {
  const id = layer.element?.attributes.find((attribute) => attribute.name === 'id')?.value;
  if (sheets.length > 1 && (id === undefined || layer.byPaint)) {
    throw new Failure(`${name}: layer "${layer.name}" has no id by which ${CONFIG_NAME} could name it`);
  }
  return { from: sheets.length > 1 ? `${file}#${id}` : file, name: layer.name, paint: layer.paint };
}

/** Whatever was written here before by the same command may be written again. */
async function refuseOtherProject(folder: string): Promise<void> {
  const path = join(folder, CONFIG_NAME);
  const { text } = await readInput(path).catch(() => ({ text: undefined }));
  if (text === undefined) return;
  const { layers } = (parse(text) ?? {}) as { layers?: readonly { from?: unknown }[] };
  const isOurs = ({ from }: { from?: unknown }) => [FIRST, SECOND].includes(String(from).replace(/#.*$/s, ''));
  if (!Array.isArray(layers) || !layers.every(isOurs)) {
    throw new Failure(`${folder}: another project is in this folder; choose a folder of its own for the two sheets`);
  }
}
