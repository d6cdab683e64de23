/** Whole layers as two sheets each: written into their file, or taken apart for two files. */
import { defined } from '../../../base/defined';
import { withBlankBefore } from '../../../edits/element/element-text';
import type { BroughtFinding } from '../../../report/fix';
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { applyEdits, type TextEdit } from '../../../text/text';
import type { PlannedBridge } from '../bridging/cut';
import { islandsOf } from '../bridging/plan';
import { checkEdited } from '../verify';
import { asTwoLayers, type TwoSheets, verifyTwoLayers, verifyTwoSheets } from './index';

/** Which layers, and how wide a bridge in mm as cut; by default all that have islands, at the limit. */
export interface TwoSheetsChoice {
  readonly layer?: string;
  readonly bridgeWidth?: number;
}

export interface TwoSheetsOutcome {
  /** The layers that are two sheets now, in painting order. */
  readonly layers: readonly DoubledLayer[];
  /** What could not be done, a sentence each. */
  readonly refusals: readonly string[];
  /** Findings, warnings or worse, that come of it and do not speak against it. */
  readonly brings: readonly BroughtFinding[];
}

export interface DoubledLayer {
  readonly sheet: Sheet;
  readonly first: readonly PlannedBridge[];
  readonly second: readonly PlannedBridge[];
}

/** The file with both sheets of each layer in it, the second right behind the first. */
export interface TwoSheetsText extends TwoSheetsOutcome {
  readonly text: string;
}

/** The file with the first sheet of each layer, and the same with the second. */
export interface TwoSheetsFiles extends TwoSheetsOutcome {
  readonly first: string;
  /** Without the layers that are one sheet. */
  readonly second: string;
}

/** Writes each layer that has islands as two, which cover each other's bridges. */
export function bridgeAsTwoLayers(report: Report, choice: TwoSheetsChoice = {}): TwoSheetsText {
  const done: Done[] = [];
  let now = report;
  // From the last layer to the first: those before keep their places.
  for (const sheet of chosenSheets(report, choice).reverse()) {
    const at = report.sheets.indexOf(sheet);
    const same = defined(now.sheets[at]);
    const result = isolated(now, same, choice);
    done.unshift({ sheet, result });
    if (!isRefusal(result)) now = checkEdited(now, result.edits);
  }
  return { ...outcomeOf(done), text: now.text };
}

function isolated(report: Report, sheet: Sheet, { bridgeWidth }: TwoSheetsChoice) {
  if (bridgeWidth === undefined) return verifyTwoLayers(report, sheet);
  const sheets = verifyTwoSheets(report, sheet, bridgeWidth);
  return isRefusal(sheets) ? refuse(sheets.reason) : asTwoLayers(report, sheet, sheets);
}

/** The two sheets of each layer that has islands, as two files. */
export function bridgeAsTwoFiles(report: Report, choice: TwoSheetsChoice = {}): TwoSheetsFiles {
  const { text } = report;
  const done = chosenSheets(report, choice).map((sheet): Done => {
    return { sheet, result: verifyTwoSheets(report, sheet, choice.bridgeWidth) };
  });
  const sheets = done.flatMap(({ result }) => (isRefusal(result) ? [] : [result]));
  const outcome = outcomeOf(done);
  const single = report.sheets.filter((sheet) => !outcome.layers.some((each) => each.sheet === sheet));
  const removed = single.flatMap(({ layer: { element } }) =>
    element ? [{ span: withBlankBefore(text, element.span), text: '' }] : [],
  );
  return {
    ...outcome,
    first: applyEdits(text, together(sheets.map(({ first }) => first.edits))),
    second: applyEdits(text, [...together(sheets.map(({ second }) => second.edits)), ...removed]),
  };
}

function together(edits: readonly (readonly TextEdit[])[]): TextEdit[] {
  return edits.flat().sort((a, b) => a.span.from - b.span.from);
}

function chosenSheets({ sheets }: Report, { layer }: TwoSheetsChoice): Sheet[] {
  const chosen = sheets.filter((sheet) => layer === undefined || sheet.layer.name === layer);
  return chosen.filter((sheet) => islandsOf(sheet).length > 0);
}

interface Done {
  readonly sheet: Sheet;
  readonly result: Result<TwoSheets>;
}

function outcomeOf(done: readonly Done[]): TwoSheetsOutcome {
  const layers: DoubledLayer[] = [];
  const refusals: string[] = [];
  const brings: BroughtFinding[] = [];
  for (const { sheet, result } of done) {
    if (isRefusal(result)) {
      refusals.push(`Layer "${sheet.layer.name}": ${result.reason}`);
      continue;
    }
    const { first, second } = result;
    layers.push({ sheet, first: first.bridges, second: second.bridges });
    brings.push(...first.brings, ...second.brings);
  }
  return { layers, refusals, brings };
}
