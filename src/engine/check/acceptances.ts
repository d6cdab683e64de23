/** `<!-- tombolo accept thin-bridge: reason -->` before an element accepts that finding within it. */
import type { Finding } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import type { CheckId } from '../../config/check-id';
import type { CommentNode, ElementNode, MarkupDocument, MarkupNode } from '../../markup/tree';
import type { Span } from '../../text/text';

export const UNUSED_ACCEPTANCE: CheckMeta = {
  id: 'unused-acceptance',
  summary: 'An accepted finding that is no longer there.',
  severity: 'warning',
  reads: 'file',
  fixes: [],
  acceptable: false,
};

interface Acceptance {
  readonly checks: readonly string[];
  /** The comment itself. */
  readonly comment: Span;
  /** Where findings are accepted: the next element. */
  readonly scope: Span | undefined;
}

/**
 * Takes out what is accepted, and reports each acceptance that matches nothing.
 * @param isKnown whether there is such a check
 */
export function applyAcceptances(
  document: MarkupDocument,
  findings: readonly Finding[],
  isKnown: (check: CheckId) => boolean,
): Finding[] {
  const acceptances = findAcceptances(document);
  const used = new Set<Acceptance>();
  const left = findings.filter((finding) => {
    const match = acceptances.find((acceptance) => accepts(acceptance, finding));
    if (match) used.add(match);
    return !match;
  });
  return [...left, ...acceptances.filter((acceptance) => !used.has(acceptance)).map((each) => unused(each, isKnown))];
}

function accepts({ checks, scope }: Acceptance, { check, span }: Finding): boolean {
  return checks.includes(check) && scope !== undefined && span.from >= scope.from && span.to <= scope.to;
}

function unused({ checks, comment }: Acceptance, isKnown: (check: CheckId) => boolean): Finding {
  const unknown = checks.find((check) => !isKnown(check));
  const why =
    unknown === undefined
      ? `There is no finding of ${checks.join(', ')} in the element that follows.`
      : `There is no check "${unknown}".`;
  return {
    check: UNUSED_ACCEPTANCE.id,
    severity: UNUSED_ACCEPTANCE.severity,
    span: comment,
    related: [],
    message: `${why} Take this acceptance out, or it will hide a fault that comes later.`,
  };
}

function findAcceptances(document: MarkupDocument): Acceptance[] {
  const found: Acceptance[] = [];
  const pending: (readonly MarkupNode[])[] = [document.children];
  for (let siblings = pending.pop(); siblings; siblings = pending.pop()) {
    siblings.forEach((node, i) => {
      if (node.kind === 'element') pending.push(node.children);
      const checks = node.kind === 'comment' ? acceptedChecks(node) : [];
      if (checks.length > 0) found.push({ checks, comment: node.span, scope: nextElement(siblings, i)?.span });
    });
  }
  return found;
}

function acceptedChecks({ value }: CommentNode): string[] {
  const match = /^\s*tombolo\s+accept\s+([\w-]+(?:\s*,\s*[\w-]+)*)/.exec(value);
  return match?.[1]?.split(',').map((check) => check.trim()) ?? [];
}

function nextElement(siblings: readonly MarkupNode[], after: number): ElementNode | undefined {
  return siblings.slice(after + 1).find((node) => node.kind === 'element');
}
