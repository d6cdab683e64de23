/** What `tombolo.json` lets pass: checks that are accepted everywhere, and findings that were there before. */
import type { Finding } from '../../checks/finding';
import type { BaselineEntry, Config, PartAcceptance } from '../../config/types';
import { SAME_FINDING } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import { attributeOf, nodeAt } from '../../markup/query';
import type { MarkupDocument } from '../../markup/tree';
import type { Passed } from '../../report/report';
import { isAcceptable } from '../metas';

/** mm: a finding of the baseline may move so far before it counts as another. */
const SAME_PLACE = 2 * SAME_FINDING;

/** A file, as configurations speak of it. */
export interface NamedFile {
  /** What `tombolo.json` calls it; undefined where nobody said: then what speaks of one file does not hold. */
  readonly name: string | undefined;
  readonly document: MarkupDocument;
}

/** Findings without those that the configuration lets pass. */
export function throughBaseline(
  findings: readonly Finding[],
  { accept, acceptedIn, baseline }: Config,
  file: NamedFile,
): { readonly kept: Finding[]; readonly passed: Passed } {
  const own = baseline.filter((entry) => entry.file === undefined || entry.file === file.name);
  const parts = acceptedIn.filter((part) => part.file === undefined || part.file === file.name);
  const kept: Finding[] = [];
  const entries = new Set<BaselineEntry>();
  const accepted = new Set<PartAcceptance>();
  let count = 0;
  for (const finding of findings) {
    if (!isAcceptable(finding.check)) {
      kept.push(finding);
      continue;
    }
    const holding = parts.filter((part) => holds(part, finding, file.document));
    for (const part of holding) accepted.add(part);
    if (accept[finding.check] !== undefined || holding.length > 0) continue;
    const matching = own.filter((entry) => matches(entry, finding));
    if (matching.length === 0) kept.push(finding);
    else count += 1;
    for (const entry of matching) entries.add(entry);
  }
  return { kept, passed: { count, entries: [...entries], accepted: [...accepted] } };
}

function holds({ check, layer, id }: PartAcceptance, finding: Finding, document: MarkupDocument): boolean {
  if (check !== finding.check || (layer !== undefined && layer !== finding.layer)) return false;
  return id === undefined || isWithin(id, finding, document);
}

/** Whether an element of this id holds all of the finding's text. */
function isWithin(id: string, { span }: Finding, document: MarkupDocument): boolean {
  for (let node = nodeAt(document, span.from); node; node = node.parent) {
    if (node.kind === 'element' && span.to <= node.span.to && attributeOf(node, 'id')?.value === id) return true;
  }
  return false;
}

function matches({ check, layer, at }: BaselineEntry, finding: Finding): boolean {
  if (check !== finding.check || layer !== finding.layer) return false;
  if (!at || !finding.at) return !at && !finding.at;
  return distance({ x: at[0], y: at[1] }, finding.at) <= SAME_PLACE;
}

/**
 * Entries that let pass what counts against a stencil now: errors and warnings. Places are rounded to 0.1 mm.
 * @param file what `tombolo.json` calls the file; without it the entries hold for every file
 */
export function baselineOf(findings: readonly Finding[], file?: string): BaselineEntry[] {
  const entries = findings
    .filter(({ check, severity }) => isAcceptable(check) && (severity === 'error' || severity === 'warning'))
    .map(({ check, layer, at }): BaselineEntry => ({ check, file, layer, at: at && [rounded(at.x), rounded(at.y)] }));
  return [...new Map(entries.map((entry) => [JSON.stringify(entry), entry])).values()];
}

const rounded = (value: number): number => Math.round(value * 10) / 10 + 0;
