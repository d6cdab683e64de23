/** Edits in the form in which the editor takes them. */
import { Command, type TextDocumentEdit, type WorkspaceEdit } from 'vscode-languageserver';
import type { DocumentEdits } from '../../protocol/offers';
import { type KnownDocument, rangeOf } from '../documents/known-document';

/** The edits for the versions that were checked alone: of the document, and of other files of the project. */
export function workspaceEdit(known: KnownDocument, edits: readonly DocumentEdits[]): WorkspaceEdit {
  return { documentChanges: edits.flatMap((each) => documentEdit(known.sibling(each.uri), each)) };
}

/** The editor's own command that puts the caret somewhere; an editor without it says nothing of it at the start. */
const GO_TO = 'tombolo.goTo';

/** What is done after the edits: the caret goes to where the artist writes on. */
export function commandAfter(known: KnownDocument, edits: readonly DocumentEdits[]): Command | undefined {
  for (const { uri, edits: changes } of edits) {
    const document = known.sibling(uri)?.document;
    for (const { span, caret } of changes) {
      if (caret === undefined || !document) continue;
      const { line, character } = document.positionAt(span.from);
      return Command.create('Go to the Reason', GO_TO, uri, { line, character: character + caret });
    }
  }
  return undefined;
}

function documentEdit(
  known: KnownDocument | undefined,
  { uri, version, open, edits }: DocumentEdits,
): TextDocumentEdit[] {
  if (known?.version !== version) return [];
  const changes = edits.map(({ span, text }) => ({ range: rangeOf(span, known.document), newText: text }));
  return [{ textDocument: { uri, version: open ? version : null }, edits: changes }];
}
