/**
 * What people read in one line of the Problems panel: fact, measure and limit at its beginning, never longer than it
 * shows, and no cure that is not offered.
 */
import { describe, expect, it } from 'vitest';
import { ALL_METAS } from '../../../src/engine/check/known-checks';
import { candidatesFor } from '../../../src/engine/fixes/index';
import type { ReportedFinding } from '../../../src/report/finding-id';
import type { Report } from '../../../src/report/report';
import { sampleReports } from './samples';

/** Characters. */
const LONGEST = 120;
const FIRST = 80;

/** What a message may tell people to do, and the kind of fix that does it. */
const CURES: readonly [RegExp, RegExp][] = [
  [/\bBridge it\b/, /^bridge-island/],
  [/\bBridge its end\b/, /^tie-tongue$/],
  [/\bCut it away\b/, /^cut-covered-island$/],
  [/\b[Rr]emove it\b/, /^(cut-island-away|remove-)/],
  [/\bRemove them all\b/, /^remove-slivers$/],
  [/\bRemove one of the two\b/, /^remove-doubled-line$/],
  [/\bUnite (them|the two outlines)\b/, /^unite-outlines$/],
  [/\bState its real\b/, /^state-size/],
];

/** Anything that asks for a change, at the beginning of a sentence or as the other choice: none is without its fix. */
const ANY_CURE =
  /(?<=^|[.:] |\bor )(bridge|cut|widen|close|open|remove|enlarge|spread|extend|join|unite|move|add|scale|state|convert|draw|divide|lower|give) (it|its|them|one|the|this)\b/gi;

const reports = sampleReports();
const findings = reports.flatMap((report) => report.complete.map((finding) => ({ report, finding })));

/** A message with each number as long as it comes: three digits before the point for mm, five for mm². */
function atLongest(message: string): string {
  const grown = (digits: number) => (whole: string) => whole.padStart(digits, '9');
  return message
    .replace(/(?<![.\d])\d+(?=(\.\d+)? mm²)/g, grown(5))
    .replace(/(?<![.\d])\d+(?=(\.\d+)?( × \d+(\.\d+)?)? mm(?!²))/g, grown(3));
}

describe('messages', () => {
  it('come of every check', () => {
    // What tells of our own faults comes of none of the drawings.
    const found = new Set([...findings.map(({ finding }) => finding.check), 'internal']);
    expect(ALL_METAS.map(({ id }) => id).filter((id) => !found.has(id))).toEqual([]);
  });

  it('have no more characters than the Problems panel shows, with their numbers at the longest', () => {
    const tooLong = findings.map(({ finding }) => atLongest(finding.message)).filter(({ length }) => length > LONGEST);
    expect([...new Set(tooLong)]).toEqual([]);
  });

  it('have measure and limit near their beginning', () => {
    const late = findings.filter(({ finding }) => !isTold(finding)).map(({ finding }) => finding.message);
    expect([...new Set(late)]).toEqual([]);
  });

  it('name no cure that is not offered', () => {
    const without = findings.flatMap(({ report, finding }) =>
      curesIn(finding.message)
        .filter((cure) => !isOffered(report, finding, cure))
        .map((cure) => `${finding.message} (${cure})`),
    );
    expect([...new Set(without)]).toEqual([]);
  });

  it('are whole sentences in one line, and leave the rest to the detail', () => {
    for (const { finding } of findings) {
      expect(finding.message).toMatch(/^[^\n]*[.?]$/);
      if (finding.detail !== undefined) expect(finding.detail).toMatch(/^[A-Z].*\.$/s);
      expect(finding.message).not.toMatch(/\btie|mend/i);
    }
  });
});

/** A measure of nothing is told in words, as "crosses"; of a tip its length is told, for its width is nothing. */
function isTold({ message, measure }: ReportedFinding): boolean {
  if (!measure) return true;
  const beginning = atLongest(message).slice(0, FIRST);
  const shows = (value: number): boolean =>
    [value.toFixed(2), value.toFixed(1), String(Number(value.toFixed(2))), value.toPrecision(2)].some((figure) =>
      beginning.includes(figure),
    );
  const isNothing = measure.value < 0.01 || message.startsWith('Tip') || / over \d/.test(message);
  // Frames and marks must agree: their limit is what rounding takes.
  const isLimitless = measure.limit <= 0.01;
  return (isNothing || shows(measure.value)) && (isLimitless || shows(measure.limit));
}

function curesIn(message: string): string[] {
  return message.match(ANY_CURE) ?? [];
}

function isOffered(report: Report, finding: ReportedFinding, cure: string): boolean {
  const asked = CURES.filter(
    ([words]) => words.test(finding.message) && words.source.toLowerCase().includes(firstWord(cure)),
  );
  const kinds = candidatesFor(report, finding).map(({ kind }) => kind);
  return asked.length > 0 && asked.every(([, kind]) => kinds.some((each) => kind.test(each)));
}

function firstWord(cure: string): string {
  return cure.split(' ')[0]?.toLowerCase().slice(1) ?? '';
}
