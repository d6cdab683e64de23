/** The lightbulb: mends that were proven for the findings under the cursor. */
import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
  type Diagnostic,
} from 'vscode-languageserver';
import type { Fix } from '../../report/report';
import type { TextEdit } from '../../text/text';
import type { CheckedDocument } from '../documents/checked-document';
import { BRIDGE_CHANGES, bridgeChanges } from './bridge-refactors';
import { registerActions } from './registration-actions';
import { workspaceEdit } from './workspace-edit';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.tombolo`;

/** Proving takes milliseconds to a second for each finding: a wide selection must not make the editor wait. */
const LIGHTBULB_BUDGET = 1500;
const FIX_ALL_BUDGET = 750;

export async function codeActions(
  checked: CheckedDocument,
  { range, context }: CodeActionParams,
  token: CancellationToken,
): Promise<CodeAction[]> {
  const wants = (kind: string) => context.only?.some((only) => isWithin(kind, only));
  const actions: CodeAction[] = [];
  if (wants(FIX_ALL)) actions.push(...(await fixAll(checked, token)));
  if (!context.only || wants(CodeActionKind.QuickFix)) {
    const [from, to] = [checked.document.offsetAt(range.start), checked.document.offsetAt(range.end)];
    const touched = indicesWhere(checked, ({ span }) => span.from <= to && span.to >= from);
    const caret = from === to ? from : undefined;
    actions.push(...(await quickFixes(checked, { indices: touched, caret }, context.diagnostics, token)));
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
}

async function quickFixes(
  checked: CheckedDocument,
  { indices, caret }: Place,
  shown: readonly Diagnostic[],
  token: CancellationToken,
): Promise<CodeAction[]> {
  const actions: CodeAction[] = [];
  const titles = new Set<string>();
  for await (const { index, mend } of fixesOf(checked, indices, LIGHTBULB_BUDGET, token, caret)) {
    const wide = /-(?:file|stack|every|layer)\b/.test(mend.kind);
    // A mend of the whole layer or file is the same from every finding.
    if (wide && titles.has(mend.title)) continue;
    titles.add(mend.title);
    const diagnostics = shown.filter(({ data }) => isDataOf(data, checked.version, index));
    actions.push({
      title: mend.title,
      kind: CodeActionKind.QuickFix,
      diagnostics,
      isPreferred: mend.preferred,
      edit: workspaceEdit(checked, mend.edits, mend.others),
      data: reachOf(mend),
    });
  }
  return actions.sort((a, b) => Number(a.data) - Number(b.data));
}

async function fixAll(checked: CheckedDocument, token: CancellationToken): Promise<CodeAction[]> {
  const edits: TextEdit[] = [];
  const every = indicesWhere(checked, () => true);
  for await (const { mend } of fixesOf(checked, every, FIX_ALL_BUDGET, token)) {
    if (mend.safe && !mend.edits.some((edit) => edits.some((other) => editsTouch(edit, other))))
      edits.push(...mend.edits);
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
): AsyncGenerator<{ index: number; mend: Fix }> {
  const end = performance.now() + budget;
  for (const index of indices) {
    for (const mend of checked.fixes(index)) yield { index, mend };
    const here = caret === undefined ? undefined : checked.bridgeAtCaret(index, caret);
    if (here) yield { index, mend: here };
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

/**
 * 0 for a mend of one place, 1 for one of the layer, 2 for one of the file, 3 to leave it as it is: the order shown.
 */
function reachOf({ kind }: Fix): number {
  if (kind === 'accept') return 3;
  if (/-(?:file|stack|every)\b/.test(kind)) return 2;
  return /-layer\b/.test(kind) ? 1 : 0;
}

function isDataOf(data: unknown, version: number, index: number): boolean {
  const { version: of, finding } = (data ?? {}) as { version?: unknown; finding?: unknown };
  return of === version && finding === index;
}

const editsTouch = (a: TextEdit, b: TextEdit): boolean => a.span.from <= b.span.to && b.span.from <= a.span.to;
