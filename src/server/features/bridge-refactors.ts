/** What can be done with a bridge that is there already: asked for where the caret is at one of its sides. */
import { type CancellationToken, type CodeAction, CodeActionKind } from 'vscode-languageserver';
import { bridgeAtOffset, changeBridge, changesFor } from '../../engine/index';
import type { CheckedDocument } from '../documents/checked-document';
import { workspaceEdit } from './workspace-edit';

export const BRIDGE_CHANGES = CodeActionKind.RefactorRewrite;

/** Milliseconds: each change takes a check or two to prove. */
const BUDGET = 2000;

/** @param offset of the caret */
export async function bridgeChanges(
  checked: CheckedDocument,
  offset: number,
  token: CancellationToken,
): Promise<CodeAction[]> {
  const end = performance.now() + BUDGET;
  const { report } = checked;
  const at = bridgeAtOffset(report, offset);
  if (!at) return [];
  const actions: CodeAction[] = [];
  for (const change of changesFor(report, at.sheet, at.bridge)) {
    const mend = changeBridge(report, at.sheet, at.bridge, change);
    if (typeof mend !== 'string') {
      actions.push({ title: mend.title, kind: BRIDGE_CHANGES, edit: workspaceEdit(checked, mend.edits) });
    }
    await new Promise((resolve) => setImmediate(resolve));
    if (token.isCancellationRequested || !checked.current || performance.now() > end) break;
  }
  return actions;
}
