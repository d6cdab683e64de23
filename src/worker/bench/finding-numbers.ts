/** Numbers for the findings of a stack that outlive its edits: a note "see 7" stays true. */
import type { Finding } from '../../checks/finding';
import { distance } from '../../geometry/base/vector';
import { TextShift } from '../../text/text-shift';
import type { CheckedDocument } from '../documents/checked-document';

/** mm within which a finding is still taken for the one that was there, though its text is another. */
const NEAR = 3;

/** mm: what went comes back, by undo, in its very place. */
const SAME = 0.01;

/** Findings that went and may come back. */
const MOST_GONE = 1000;

interface Numbered {
  readonly number: number;
  readonly uri: string;
  readonly finding: Finding;
}

interface Candidate {
  readonly old: Numbered;
  readonly now: number;
  readonly cost: number;
}

export class FindingNumbers {
  private last = 0;
  private known: readonly Numbered[] = [];
  private gone: readonly Numbered[] = [];
  private texts: ReadonlyMap<string, string> = new Map();

  /** @param documents of the stack, in the order in which new findings are numbered */
  number(documents: readonly CheckedDocument[]): ReadonlyMap<Finding, number> {
    const changes = this.changesTo(documents);
    const findings = documents.flatMap(({ uri, report }) => report.findings.map((finding) => ({ uri, finding })));
    const numbers = new Map<number, number>();
    const taken = new Set<number>();
    const take = (candidates: readonly Candidate[]) => {
      for (const candidate of [...candidates].sort((a, b) => a.cost - b.cost)) {
        const { now, old } = candidate;
        if (numbers.has(now) || taken.has(old.number)) continue;
        numbers.set(now, old.number);
        taken.add(old.number);
      }
    };
    take(candidatesAmong(this.known, findings, (old, now) => costOf(old, now, changes.get(old.uri))));
    take(candidatesAmong(this.gone, findings, (old, now) => (awayOf(old.finding, now) <= SAME ? 0 : undefined)));
    const numbered = findings.map((each, index): Numbered => {
      const number = numbers.get(index) ?? this.last + 1;
      this.last = Math.max(this.last, number);
      return { ...each, number };
    });
    this.remember(numbered, documents);
    return new Map(numbered.map(({ finding, number }) => [finding, number]));
  }

  private changesTo(documents: readonly CheckedDocument[]): ReadonlyMap<string, TextShift> {
    return new Map(documents.map(({ uri, file: { text } }) => [uri, new TextShift(this.texts.get(uri) ?? text, text)]));
  }

  private remember(numbered: readonly Numbered[], documents: readonly CheckedDocument[]): void {
    const here = new Set(numbered.map(({ number }) => number));
    this.gone = [...this.known, ...this.gone].filter(({ number }) => !here.has(number)).slice(0, MOST_GONE);
    this.known = numbered;
    this.texts = new Map(documents.map(({ uri, file }) => [uri, file.text]));
  }
}

/** Pairs that may be one and the same: of the same check, in the same file and layer. */
function candidatesAmong(
  olds: readonly Numbered[],
  findings: readonly { readonly uri: string; readonly finding: Finding }[],
  cost: (old: Numbered, now: Finding) => number | undefined,
): Candidate[] {
  const keyOf = (uri: string, { check, layer = '' }: Finding) => `${uri}\n${check}\n${layer}`;
  const byKey = new Map<string, Numbered[]>();
  for (const old of olds) {
    const key = keyOf(old.uri, old.finding);
    byKey.set(key, [...(byKey.get(key) ?? []), old]);
  }
  return findings.flatMap(({ uri, finding }, now) =>
    (byKey.get(keyOf(uri, finding)) ?? []).flatMap((old) => {
      const price = cost(old, finding);
      return price === undefined ? [] : [{ old, now, cost: price }];
    }),
  );
}

/** How much speaks against it that both are one, in mm; undefined where they are not. */
function costOf(old: Numbered, now: Finding, change: TextShift | undefined): number | undefined {
  const away = awayOf(old.finding, now);
  if (change?.forward(old.finding.span.from) === now.span.from) return away / (1 + NEAR);
  return away <= NEAR ? away : undefined;
}

/** mm; findings about no place lie together. */
function awayOf({ at: a }: Finding, { at: b }: Finding): number {
  if (a && b) return distance(a, b);
  return a === b ? 0 : Infinity;
}
