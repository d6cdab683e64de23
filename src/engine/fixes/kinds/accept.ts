/** Changes nothing but the file's mind: a comment that accepts a finding. */
import type { Finding } from '../../../checks/finding';
import { nodeAt } from '../../../markup/query';
import type { ElementNode, MarkupDocument } from '../../../markup/tree';
import type { Report } from '../../../report/report';
import { isAcceptable } from '../../metas';
import { findingsOfNewKinds } from '../faults/compare';
import type { FixKind, ProvenChange } from '../kind';
import { checkEdited } from '../verify';

/** The finding is accepted in the element that it stands in, by a comment before that element. */
export const accept: FixKind = {
  kind: 'accept',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: false,
  offer: ({ drawing }, finding) => {
    const element = isAcceptable(finding.check) ? elementAt(drawing.document, finding.span.from) : undefined;
    return element && `Ignore ${finding.check} here…`;
  },
  prove: acceptInText,
};

/** A comment needs no proof where the text is whole: it changes nothing that is measured. Broken text it may end or begin elsewhere. */
function acceptInText(report: Report, { check, span }: Finding): ProvenChange | string {
  const { drawing, text, complete } = report;
  const element = elementAt(drawing.document, span.from);
  if (!element) return 'There is no element here that it could be accepted in.';
  const at = element.span.from;
  const lineStart = text.lastIndexOf('\n', at - 1) + 1;
  const before = text.slice(lineStart, at);
  const next = /^\s*$/.test(before) ? `\n${before}` : '';
  // The reason is the artist's to write.
  const start = `<!-- tombolo accept ${check}: `;
  const edits = [{ span: { from: at, to: at }, text: `${start} -->${next}`, caret: start.length }];
  if (
    complete.some((each) => each.check === 'unreadable-markup') &&
    isReadOtherwise(report, checkEdited(report, edits))
  )
    return 'The text is broken: with a comment here it would be read otherwise.';
  return { edits, brings: [] };
}

function isReadOtherwise(before: Report, after: Report): boolean {
  return before.drawing.shapes.length !== after.drawing.shapes.length || findingsOfNewKinds(before, after).length > 0;
}

function elementAt(document: MarkupDocument, offset: number): ElementNode | undefined {
  const node = nodeAt(document, offset);
  return node?.kind === 'element' ? node : node?.parent;
}
