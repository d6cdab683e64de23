/** Register marks for the whole stack, offered where the caret is at the start of one of its layers. */
import { type CodeAction, CodeActionKind } from 'vscode-languageserver';
import { addRegistrationMarks } from '../../engine/index';
import type { CheckedDocument } from '../documents/checked-document';
import { workspaceEdit } from './workspace-edit';

/** @param offset of the caret */
export function registerActions(checked: CheckedDocument, offset: number): CodeAction[] {
  const {
    drawing: {
      document: { root },
    },
    sheets,
  } = checked.report;
  const starts = sheets.map(({ layer }) => layer.element ?? root);
  if (!starts.some((element) => element && element.startTag.from <= offset && offset < element.startTag.to)) return [];
  const fix = addRegistrationMarks(checked.report);
  if (fix === undefined || typeof fix === 'string') return [];
  const { title, edits, others } = fix;
  return [{ title, kind: CodeActionKind.RefactorRewrite, edit: workspaceEdit(checked, edits, others) }];
}
