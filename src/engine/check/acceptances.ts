/**
 * `<!-- tombolo accept thin-bridge: reason -->` before an element accepts that finding within it, as
 * `data-tombolo-accept="thin-bridge: reason"` on the element does, which programs write more easily.
 */

import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Finding } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import type { CheckId } from '../../config/check-id';
import { attributeOf, nodeAt } from '../../markup/query';
import type { Attribute, CommentNode, ElementNode, MarkupDocument, MarkupNode } from '../../markup/tree';
import type { Span } from '../../text/text';
import { MARKUP_ROOM, quoted, shortened } from '../../text/wording';

export const UNUSED_ACCEPTANCE: CheckMeta = {
  id: 'unused-acceptance',
  summary: 'An accepted finding that is no longer there.',
  outcome: 'leave an acceptance of nothing',
  severity: 'warning',
  reads: 'file',
  fixes: [],
  acceptable: false,
};

/** What speaks against an acceptance of nothing. */
export const HIDES_LATER = 'Remove it, or it will hide a fault that comes later.';

/** So many acceptances of nothing are told one by one: a program that writes more of them is told once. */
const MOST_TOLD = 1000;

interface Acceptance {
  readonly checks: readonly string[];
  /** A comment's span is made when it is asked for, and of a million of them few are. */
  readonly written: CommentNode | Attribute;
  /** Where findings are accepted: the next element, or the attribute's own. */
  readonly scope: ElementNode | undefined;
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
  if (acceptances.length === 0) return [...findings];
  const byScope = groupByScope(acceptances, elementsAround(findings, document));
  const used = new Set<Acceptance>();
  const left = findings.filter((finding) => {
    const match = acceptanceOf(finding, document, byScope);
    if (match) used.add(match);
    return !match;
  });
  const idle = acceptances.filter((acceptance) => !used.has(acceptance));
  const told = idle.slice(0, MOST_TOLD).map((each) => unused(each, isKnown));
  const more = idle.length - told.length;
  return [...left, ...told, ...(more > 0 ? [moreUnused(more, defined(idle[MOST_TOLD]))] : [])];
}

/** Where an acceptance would take something out: a program may write a million of them elsewhere. */
function elementsAround(findings: readonly Finding[], document: MarkupDocument): ReadonlySet<ElementNode> {
  const elements = new Set<ElementNode>();
  for (const { span } of findings) {
    for (let node = nodeAt(document, span.from); node; node = node.parent) {
      checkpoint();
      if (node.kind !== 'element') continue;
      if (elements.has(node)) break;
      elements.add(node);
    }
  }
  return elements;
}

function groupByScope(
  acceptances: readonly Acceptance[],
  scopes: ReadonlySet<ElementNode>,
): ReadonlyMap<ElementNode, readonly Acceptance[]> {
  const groups = new Map<ElementNode, Acceptance[]>();
  for (const acceptance of acceptances) {
    const { scope } = acceptance;
    if (!scope || !scopes.has(scope)) continue;
    const group = groups.get(scope);
    if (group) group.push(acceptance);
    else groups.set(scope, [acceptance]);
  }
  return groups;
}

/** Of several, the first in the text: that of the outermost element. */
function acceptanceOf(
  { check, span }: Finding,
  document: MarkupDocument,
  byScope: ReadonlyMap<ElementNode, readonly Acceptance[]>,
): Acceptance | undefined {
  let first: Acceptance | undefined;
  for (let node = nodeAt(document, span.from); node; node = node.parent) {
    if (node.kind !== 'element' || span.to > node.span.to) continue;
    first = byScope.get(node)?.find(({ checks }) => checks.includes(check)) ?? first;
  }
  return first;
}

function unused({ checks, written }: Acceptance, isKnown: (check: CheckId) => boolean): Finding {
  const unknown = checks.find((check) => !isKnown(check));
  const where = 'kind' in written ? 'in the element that follows' : 'in this element';
  const why =
    unknown === undefined
      ? `No ${shortened(checks.join(', '), MARKUP_ROOM)} ${where}`
      : `There is no check ${quoted([unknown])[0]}`;
  return idleFinding(written.span, `${why}: this acceptance does nothing.`);
}

function moreUnused(count: number, { written }: Acceptance): Finding {
  return idleFinding(written.span, `${count} more acceptances from here on do nothing.`);
}

function idleFinding(span: Span, message: string): Finding {
  const { id: check, severity } = UNUSED_ACCEPTANCE;
  return { check, severity, span, related: [], message, detail: HIDES_LATER };
}

/** How a program accepts what it draws. */
const ATTRIBUTE = 'data-tombolo-accept';

function findAcceptances(document: MarkupDocument): Acceptance[] {
  const found: Acceptance[] = [];
  const lists = new CheckLists();
  // Attributes are read from the text when they are asked for: of a large drawing without such a one, none is.
  const byAttribute = document.text.includes(ATTRIBUTE);
  const pending: (readonly MarkupNode[])[] = [document.children];
  for (let siblings = pending.pop(); siblings; siblings = pending.pop()) {
    let next: ElementNode | undefined;
    for (let i = siblings.length - 1; i >= 0; i -= 1) {
      checkpoint();
      const node = siblings[i]!;
      if (node.kind === 'element') next = node;
      if (node.kind === 'element' && node.children.length > 0) pending.push(node.children);
      const own = node.kind === 'element' && byAttribute ? attributeOf(node, ATTRIBUTE) : undefined;
      if (own) {
        const checks = lists.of(own.value);
        if (checks.length > 0) found.push({ checks, written: own, scope: next });
      }
      const checks = node.kind === 'comment' ? acceptedChecks(node, lists) : [];
      if (node.kind === 'comment' && checks.length > 0) found.push({ checks, written: node, scope: next });
    }
  }
  return found.sort((a, b) => a.written.span.from - b.written.span.from);
}

function acceptedChecks({ value }: CommentNode, lists: CheckLists): readonly string[] {
  const begin = /^\s*tombolo\s+accept\s/.exec(value)?.[0].length;
  return begin === undefined ? [] : lists.of(value.slice(begin));
}

/** The checks before the reason, `thin-bridge, loose-tongue: reason`: those that are written alike are one list. */
class CheckLists {
  private readonly lists = new Map<string, readonly string[]>();

  of(text: string): readonly string[] {
    const named = /^\s*([\w-]+(?:\s*,\s*[\w-]+)*)/.exec(text)?.[1];
    if (named === undefined) return [];
    const known = this.lists.get(named);
    if (known) return known;
    const list = named.split(',').map((check) => check.trim());
    this.lists.set(named, list);
    return list;
  }
}
