/** Edits in the form in which the editor takes them. */
import type { TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { DocumentEdits } from '../../protocol/offers';
import { type KnownDocument, rangeOf } from '../documents/known-document';

/** The edits for the versions that were checked alone: of the document, and of other files of the project. */
export function workspaceEdit(known: KnownDocument, edits: readonly DocumentEdits[]): WorkspaceEdit {
  return { documentChanges: edits.flatMap((each) => documentEdit(known.sibling(each.uri), each)) };
}

function documentEdit(
  known: KnownDocument | undefined,
  { uri, version, open, edits }: DocumentEdits,
): TextDocumentEdit[] {
  if (known?.version !== version) return [];
  const changes = edits.map(({ span, text }) => ({ range: rangeOf(span, known.document), newText: text }));
  return [{ textDocument: { uri, version: open ? version : null }, edits: changes }];
}
