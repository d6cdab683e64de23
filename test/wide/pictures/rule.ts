/**
 * The rule by which findings are judged, as a practitioner would with the sheet on her table: true is what she sees in
 * the print at true size, loses at the cutter, or has lifting or tearing on the table; all else is noise, by its cause.
 * A hint is noise only where it says the same thing twice. The figures are common practice, no source.
 */
import type { ReportedFinding } from '../../../src/report/finding-id';
import type { Report } from '../../../src/report/report';
import { coverOf, distanceBetween, extentOf } from './place-of-finding';

/** `covered` by later paint; too small to see; told before; outside the sheet. */
export type Noise = 'covered' | 'unseen' | 'told-before' | 'outside';

/** mm²: an island, and an opening or a crossing, that nobody sees. */
const [UNSEEN_ISLAND, UNSEEN_CROSSING] = [0.1, 0.25];
/** mm: a crack or hairline that nobody sees; a tip that beam and paint round off; a stretch that is cut twice. */
const [HAIRLINE, ROUNDED, SCORCHED] = [0.05, 1.3, 2];
/** mm: bare ground along less than two slips is a speck. */
const SPECK = 1;
/** mm: of one seam, or one bundle of lines. */
const TOGETHER = 5;
/** Of an area: what later paint covers but for rounding. */
const COVERED = 0.99;

interface Judged {
  readonly finding: ReportedFinding;
  readonly noise: Noise | undefined;
}

/** Each finding with the cause for which it is noise, if it is. */
export function judge(report: Report): Judged[] {
  const told: ReportedFinding[] = [];
  return report.complete.map((finding) => {
    const noise = noiseOf(report, finding, told);
    if (noise !== 'unseen' && noise !== 'outside') told.push(finding);
    return { finding, noise };
  });
}

function noiseOf(report: Report, finding: ReportedFinding, told: readonly ReportedFinding[]): Noise | undefined {
  if (isOutside(report, finding)) return 'outside';
  const quiet = finding.severity === 'hint' || finding.severity === 'info';
  if (!quiet && isUnseen(finding)) return 'unseen';
  if (!quiet && COVERABLE.has(finding.check) && coverOf(report, finding) >= COVERED) return 'covered';
  return told.some((other) => other.check === finding.check && isSame(finding, other)) ? 'told-before' : undefined;
}

/** A bridge that alone holds a piece is an error, and counts wherever it lies. */
const COVERABLE = new Set(['floating-island', 'narrow-opening', 'small-opening']);

function isOutside({ drawing }: Report, { at }: ReportedFinding): boolean {
  if (!at) return false;
  return at.x < -HAIRLINE || at.y < -HAIRLINE || at.x > drawing.width + HAIRLINE || at.y > drawing.height + HAIRLINE;
}

function isUnseen({ check, measure, subject }: ReportedFinding): boolean {
  const value = measure?.value ?? Infinity;
  const part = subject?.kind === 'thin' ? subject.part : undefined;
  switch (check) {
    case 'floating-island':
      return value < UNSEEN_ISLAND;
    case 'small-opening':
      return value < HAIRLINE;
    case 'narrow-opening':
      return part?.kind === 'tip' ? part.reach <= ROUNDED : isCrack(value, part?.length);
    case 'thin-bridge':
      return isCrack(value, part?.length);
    case 'crossed-outline':
      return value < UNSEEN_CROSSING;
    case 'doubled-cut':
      return value <= SCORCHED;
    case 'short-overlap':
      return subject?.kind === 'overlap' && subject.overlap.length <= SPECK;
    case 'bare-gap':
      return subject?.kind === 'gap' && subject.gap.length <= SPECK;
    default:
      return false;
  }
}

function isCrack(width: number, length = Infinity): boolean {
  return width <= HAIRLINE && length < SCORCHED;
}

/** Whether two findings of a check have one cause. */
function isSame(finding: ReportedFinding, other: ReportedFinding): boolean {
  const { check, layerId, subject } = finding;
  if (check === 'edge-opening') return true;
  if (layerId !== other.layerId) return false;
  switch (check) {
    case 'mixed-colours':
    case 'open-outline':
      return true;
    case 'doubled-cut':
      return distanceBetween(finding.at, other.at) < TOGETHER;
    case 'short-overlap':
      return (
        subject?.kind === 'overlap' &&
        other.subject?.kind === 'overlap' &&
        subject.later === other.subject.later &&
        distanceBetween(finding.at, other.at) < TOGETHER
      );
    case 'narrow-opening':
      return isSameSlot(finding, other);
    case 'thin-bridge':
      return overlap(finding, other) && distanceBetween(finding.at, other.at) < TOGETHER / 2;
    default:
      return false;
  }
}

/** Slots of one opening that is too fine all along. Tips are each a place of their own. */
function isSameSlot({ subject }: ReportedFinding, other: ReportedFinding): boolean {
  if (subject?.kind !== 'thin' || other.subject?.kind !== 'thin') return false;
  const [one, before] = [subject.part, other.subject.part];
  return one.kind !== 'tip' && before.kind !== 'tip' && one.polygon === before.polygon;
}

function overlap(finding: ReportedFinding, other: ReportedFinding): boolean {
  const [a, b] = [extentOf(finding), extentOf(other)];
  return !!a && !!b && a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
