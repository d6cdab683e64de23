/** Edits in the form in which the editor takes them. */
import type { TextEdit as LspEdit, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { FileEdits } from '../../report/report';
import type { TextEdit } from '../../text/text';
import type { CheckedDocument } from '../documents/checked-document';
import { rangeOf } from '../documents/diagnostics';

/** The edits for the checked version alone, and those of other files of the project. */
export function workspaceEdit(
  checked: CheckedDocument,
  edits: readonly TextEdit[],
  others: readonly FileEdits[] = [],
): WorkspaceEdit {
  const rest = others.flatMap(({ file, edits: theirs }) => {
    const other = checked.named(file);
    return other ? [documentEdit(other, theirs)] : [];
  });
  return { documentChanges: [documentEdit(checked, edits), ...rest] };
}

function documentEdit({ document, open, version }: CheckedDocument, edits: readonly TextEdit[]): TextDocumentEdit {
  const changes: LspEdit[] = edits.map(({ span, text }) => ({ range: rangeOf(span, document), newText: text }));
  return { textDocument: { uri: document.uri, version: open ? version : null }, edits: changes };
}
