/** What is offered at a line of a program: no edits of its drawing, which the next run would make anew. */
import { type CodeAction, CodeActionKind, type CodeActionParams, Command } from 'vscode-languageserver';
import { isAcceptable } from '../../engine/check/known-checks';
import { ACCEPT_DRAWN, type AcceptDrawn, KEEP_BRIDGES, OPEN_DRAWING } from '../../protocol/programs';
import { oneLine } from '../../text/plain-text';
import { NAME_ROOM, shortened } from '../../text/wording';
import { rangeOf } from '../documents/known-document';
import { nameOf } from './drawing-name';
import type { ProgramFinding } from './program-findings';
import type { Programs } from './programs';

/** All are commands of the editor: they ask something, or change other files than this. */
export function programActions(programs: Programs, { textDocument, range, context }: CodeActionParams): CodeAction[] {
  if (context.only && !context.only.some((only) => isQuickFix(only))) return [];
  const found = programs
    .findingsOf(textDocument.uri)
    .filter((each) => each.range.start.line >= range.start.line && each.range.start.line <= range.end.line);
  const actionFor = (each: ProgramFinding, title: string, command: string, ...words: unknown[]): CodeAction => ({
    title: oneLine(title),
    kind: CodeActionKind.QuickFix,
    diagnostics: context.diagnostics.filter(({ code }) => code === each.findings[0]?.check),
    command: Command.create(oneLine(title), command, ...words),
  });
  const islands = oncePerDrawing(found.filter(({ findings: [first] }) => first?.check === 'floating-island'));
  return [
    ...islands.map((each) => ({
      ...actionFor(each, `Keep bridges for ${quotedName(each)}`, KEEP_BRIDGES, each.known.uri),
      isPreferred: true,
    })),
    ...oncePerDrawing(found).map((each) =>
      actionFor(each, openTitle(each), OPEN_DRAWING, each.known.uri, placeIn(each)),
    ),
    ...found.flatMap((each) => {
      const accepted = acceptanceOf(each);
      return accepted
        ? [actionFor(each, `Ignore ${accepted.check} in ${accepted.where}…`, ACCEPT_DRAWN, accepted)]
        : [];
    }),
  ];
}

const isQuickFix = (only: string): boolean =>
  only === CodeActionKind.Empty || only === CodeActionKind.QuickFix || only.startsWith(`${CodeActionKind.QuickFix}.`);

function oncePerDrawing(found: readonly ProgramFinding[]): ProgramFinding[] {
  return [...new Map([...found].reverse().map((each) => [each.known.uri, each])).values()].reverse();
}

const quotedName = ({ known }: ProgramFinding): string => `"${shortened(nameOf(known.uri), NAME_ROOM)}"`;

function openTitle(each: ProgramFinding): string {
  const [first] = each.findings;
  const id = first?.from.id;
  return `Open ${quotedName(each)}${id === undefined ? '' : ` at ${shortened(id, NAME_ROOM)}`}`;
}

function placeIn({ known, findings: [first] }: ProgramFinding) {
  return first && rangeOf(first.span, known.document);
}

/** By the ids of what is drawn there, else by its layer, else in the whole file. */
function acceptanceOf({ known, findings }: ProgramFinding): AcceptDrawn | undefined {
  const [first] = findings;
  if (!first || !isAcceptable(first.check)) return undefined;
  const ids = [...new Set(findings.flatMap(({ from }) => from.id ?? []))];
  const { check, layer } = first;
  const drawing = known.uri;
  const config = known.config?.uri;
  const common = { check, drawing, ...(config !== undefined && { config }) };
  if (ids.length > 0 && findings.every(({ from }) => from.id !== undefined)) {
    const [id = ''] = ids;
    const more = ids.length === 1 ? '' : ` and ${ids.length - 1} more`;
    return { ...common, parts: ids.map((each) => ({ id: each })), where: `"${shortened(id, NAME_ROOM)}"${more}` };
  }
  if (layer !== undefined) return { ...common, parts: [{ layer }], where: `layer "${shortened(layer, NAME_ROOM)}"` };
  return { ...common, parts: [{}], where: 'this drawing' };
}
