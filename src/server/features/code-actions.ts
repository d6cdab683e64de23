/** The lightbulb: fixes that were proven for the findings under the cursor, and why others could not be. */
import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
  type Diagnostic,
} from 'vscode-languageserver';
import { type Fix, type FixRefusal, offerOrder, sharedChange } from '../../engine/index';
import type { TextEdit } from '../../text/text';
import type { CheckedDocument } from '../documents/checked-document';
import { BRIDGE_CHANGES, bridgeChanges } from './bridge-refactors';
import { registerActions } from './registration-actions';
import { workspaceEdit } from './workspace-edit';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.tombolo`;

/** Proving takes milliseconds to a second for each finding: a wide selection must not make the editor wait. */
const LIGHTBULB_BUDGET = 1500;
const FIX_ALL_BUDGET = 750;

/** @param showsDisabled whether the editor can show an action that is not to be had, with the reason */
export async function codeActions(
  checked: CheckedDocument,
  { range, context }: CodeActionParams,
  token: CancellationToken,
  showsDisabled = false,
): Promise<CodeAction[]> {
  const wants = (kind: string) => context.only?.some((only) => isWithin(kind, only));
  const actions: CodeAction[] = [];
  if (wants(FIX_ALL)) actions.push(...(await fixAll(checked, token)));
  if (!context.only || wants(CodeActionKind.QuickFix)) {
    const [from, to] = [checked.document.offsetAt(range.start), checked.document.offsetAt(range.end)];
    const touched = indicesWhere(checked, ({ span }) => span.from <= to && span.to >= from);
    const caret = from === to ? from : undefined;
    const place = { indices: touched, caret, shown: context.diagnostics };
    // Nobody asked: what cannot be had would only be in the way.
    const asked = context.triggerKind !== CodeActionTriggerKind.Automatic;
    actions.push(...(await quickFixes(checked, place, showsDisabled && asked, token)));
  }
  if (wants(BRIDGE_CHANGES) || (!context.only && context.triggerKind !== CodeActionTriggerKind.Automatic)) {
    const offset = checked.document.offsetAt(range.start);
    actions.push(...(await bridgeChanges(checked, offset, token)), ...registerActions(checked, offset));
  }
  return token.isCancellationRequested ? [] : actions;
}

const isWithin = (kind: string, wanted: string): boolean => kind === wanted || kind.startsWith(`${wanted}.`);

/** Where the lightbulb was asked for. */
interface Place {
  /** The findings there. */
  readonly indices: readonly number[];
  /** The offset, where nothing is selected. */
  readonly caret: number | undefined;
  /** The underlines there. */
  readonly shown: readonly Diagnostic[];
}

/** What is offered in one place of the menu. */
interface Offer {
  readonly order: number;
  readonly action: CodeAction;
}

async function quickFixes(
  checked: CheckedDocument,
  place: Place,
  showsDisabled: boolean,
  token: CancellationToken,
): Promise<CodeAction[]> {
  const offers: Offer[] = [];
  const shared = new Set<string>();
  for await (const { index, result } of fixesOf(checked, place.indices, LIGHTBULB_BUDGET, token, place.caret)) {
    if ('refused' in result && !showsDisabled) continue;
    const change = sharedChange(result);
    const key = `${'refused' in result ? 'not ' : ''}${change}`;
    if (change !== undefined && shared.has(key)) continue;
    if (change !== undefined) shared.add(key);
    const diagnostics = place.shown.filter(({ data }) => isDataOf(data, checked.version, index));
    offers.push({ order: offerOrder(result), action: { ...actionOf(checked, result), diagnostics } });
  }
  // What cannot be had comes last.
  const rank = ({ order, action }: Offer): number => (action.disabled ? 10 : 0) + order;
  return offers.sort((a, b) => rank(a) - rank(b)).map(({ action }) => action);
}

function actionOf(checked: CheckedDocument, result: Fix | FixRefusal): CodeAction {
  const { title } = result;
  if ('refused' in result) return { title, kind: CodeActionKind.QuickFix, disabled: { reason: result.refused } };
  const { preferred, edits, others } = result;
  return {
    title,
    kind: CodeActionKind.QuickFix,
    isPreferred: preferred,
    edit: workspaceEdit(checked, edits, others),
  };
}

async function fixAll(checked: CheckedDocument, token: CancellationToken): Promise<CodeAction[]> {
  const edits: TextEdit[] = [];
  const every = indicesWhere(checked, () => true);
  for await (const { result } of fixesOf(checked, every, FIX_ALL_BUDGET, token)) {
    if ('refused' in result || !result.safe) continue;
    if (!result.edits.some((edit) => edits.some((other) => editsTouch(edit, other)))) edits.push(...result.edits);
  }
  if (edits.length === 0) return [];
  return [{ title: 'Mend all that is safe', kind: FIX_ALL, edit: workspaceEdit(checked, edits) }];
}

/** Proves finding by finding, letting other messages in between, until cancelled, outdated or out of time. */
async function* fixesOf(
  checked: CheckedDocument,
  indices: readonly number[],
  budget: number,
  token: CancellationToken,
  caret?: number,
): AsyncGenerator<{ index: number; result: Fix | FixRefusal }> {
  const end = performance.now() + budget;
  for (const index of indices) {
    const { fixes, refusals } = checked.fixes(index);
    for (const result of [...fixes, ...refusals]) yield { index, result };
    const here = caret === undefined ? undefined : checked.bridgeAtCaret(index, caret);
    if (here) yield { index, result: here };
    await new Promise((resolve) => setImmediate(resolve));
    if (token.isCancellationRequested || !checked.current || performance.now() > end) return;
  }
}

function indicesWhere(
  { report }: CheckedDocument,
  wanted: (finding: CheckedDocument['report']['findings'][number]) => boolean,
): number[] {
  return report.findings.flatMap((finding, index) => (wanted(finding) ? [index] : []));
}

function isDataOf(data: unknown, version: number, index: number): boolean {
  const { version: of, finding } = (data ?? {}) as { version?: unknown; finding?: unknown };
  return of === version && finding === index;
}

const editsTouch = (a: TextEdit, b: TextEdit): boolean => a.span.from <= b.span.to && b.span.from <= a.span.to;
