/** The mend that changes nothing but the file's mind: a comment that accepts a finding. */
import type { Finding } from '../../checks/finding';
import { nodeAt } from '../../markup/query';
import type { ElementNode, MarkupDocument } from '../../markup/tree';
import type { Fix, Report } from '../../report/report';
import { isAcceptable } from '../check/known-checks';

/** Offers to accept a finding in the element that it stands in, by a comment before that element. */
export function acceptFix({ drawing, text }: Report, finding: Finding): Fix | undefined {
  if (!isAcceptable(finding.check)) return undefined;
  const element = elementAt(drawing.document, finding.span.from);
  if (!element) return undefined;
  const at = element.span.from;
  const lineStart = text.lastIndexOf('\n', at - 1) + 1;
  const before = text.slice(lineStart, at);
  const next = /^\s*$/.test(before) ? `\n${before}` : '';
  return {
    kind: 'accept',
    title: `Accept ${finding.check} in this ${element.localName}`,
    check: finding.check,
    preferred: false,
    safe: false,
    edits: [{ span: { from: at, to: at }, text: `<!-- tombolo accept ${finding.check}: say why -->${next}` }],
  };
}

function elementAt(document: MarkupDocument, offset: number): ElementNode | undefined {
  const node = nodeAt(document, offset);
  return node?.kind === 'element' ? node : node?.parent;
}
