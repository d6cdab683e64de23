/** An example of each check, before and after: what is found in it, what mends it, and how both look. */
import type { FixCandidate, Report, ReportedFinding } from '../engine/index';
import { applyEdits, candidatesFor, check, proveFix, readConfig } from '../engine/index';
import { isRefusal } from '../report/refusal';
import { markedPicture } from './marked-picture';

export interface ExampleFiles {
  readonly id: string;
  readonly before: string;
  /** Where no fix does it. */
  readonly after?: string;
  /** Of `tombolo.json`, where its own settings matter. */
  readonly config?: string;
  readonly configAfter?: string;
}

export interface CheckExample {
  readonly id: string;
  readonly before: ExampleSide;
  readonly after: ExampleSide;
  /** What is found, in its own words, with the line that it stands in. */
  readonly message: string;
  readonly line: number;
  /** The title of the fix, as the lightbulb shows it; undefined where it is done by hand. */
  readonly fix?: string;
}

interface ExampleSide {
  readonly text: string;
  readonly config?: string;
  /** SVG */
  readonly picture: string;
}

const USUAL = '{ "material": "card-0.3" }';

/** @throws where the example does not show what it is there for, or is not mended by what it says */
export function checkExample({ id, before, after, config, configAfter }: ExampleFiles): CheckExample {
  const report = reportOf(before, config);
  const finding = report.findings.find((each) => each.check === id);
  if (!finding) throw new Error(`The example of ${id} has no such finding.`);
  const fix = after === undefined && configAfter === undefined ? fixOf(report, finding) : undefined;
  const mended = after ?? fix?.text ?? before;
  const mendedReport = reportOf(mended, configAfter ?? config);
  const left = mendedReport.findings.filter(({ severity }) => severity !== 'hint' && severity !== 'info');
  if (left.length > 0) throw new Error(`The mended example of ${id} has a finding: ${left[0]?.message}`);
  return {
    id,
    message: finding.message,
    line: before.slice(0, finding.span.from).split('\n').length,
    before: side(before, config, markedPicture(report, id)),
    after: side(mended, configAfter ?? config, markedPicture(mendedReport)),
    ...(fix && { fix: fix.title }),
  };
}

function reportOf(text: string, config = USUAL): Report {
  return check(text, { config: readConfig(config).config });
}

function side(text: string, config: string | undefined, picture: string): ExampleSide {
  return { text, ...(config !== undefined && { config }), picture };
}

/** The fix that the lightbulb would put first. */
function fixOf(report: Report, finding: ReportedFinding): { title: string; text: string } {
  const candidates = candidatesFor(report, finding).filter(({ kind }) => kind !== 'accept');
  const first = (a: FixCandidate, b: FixCandidate) => Number(b.preferred) - Number(a.preferred);
  for (const candidate of candidates.sort(first)) {
    const fix = proveFix(report, candidate);
    if (fix && !isRefusal(fix)) return { title: fix.title, text: applyEdits(report.text, fix.edits) };
  }
  throw new Error(`Nothing mends the example of ${finding.check}.`);
}
