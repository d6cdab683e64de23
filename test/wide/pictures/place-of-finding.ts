/** Where a finding lies, and how much of that later paint covers. Sheet mm. */
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Box, Region } from '../../../src/geometry/base/polygon-types';
import { growBox } from '../../../src/geometry/base/ring';
import { areaOf, clipToBox, intersection, union } from '../../../src/geometry/boolean/index';
import type { ReportedFinding } from '../../../src/report/finding-id';
import type { Report } from '../../../src/report/report';

/** mm: so that the extent of a line has an area. */
const RIM = 0.0005;

/** What the finding is about: the island, the opening, or the thin part with what is round it. */
export function regionOf({ check, subject }: ReportedFinding): Region {
  if (subject?.kind === 'island') return [subject.piece.polygon];
  if (subject?.kind === 'opening') return [subject.opening];
  if (subject?.kind !== 'thin') return [];
  const { sheet, part } = subject;
  return clipToBox(check === 'thin-bridge' ? sheet.material : sheet.openings, growBox(part.extent, RIM));
}

/** 0..1: which share of it the layers that are sprayed later cover. */
export function coverOf({ stack }: Report, finding: ReportedFinding): number {
  const region = regionOf(finding);
  const number = stack.layers.findIndex(({ sheet }) => sheet.layer.id === finding.layerId);
  if (region.length === 0 || number < 0) return 0;
  const later = stack.layers.slice(number + 1).map(({ sheet }) => intersection(region, sheet.openings));
  return areaOf(union(later)) / Math.max(areaOf(region), Number.MIN_VALUE);
}

export function extentOf({ subject }: ReportedFinding): Box | undefined {
  if (subject?.kind === 'thin') return subject.part.extent;
  return subject?.kind === 'gap' ? subject.gap.extent : undefined;
}

export function distanceBetween(a: Point | undefined, b: Point | undefined): number {
  return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : Infinity;
}

/** Whether a finding speaks of a place: where it lies, where a related place does, or within its extent. */
export function speaksOf(finding: ReportedFinding, place: Point, reach: number): boolean {
  const places = [finding.at, ...finding.related.map(({ at }) => at)];
  if (places.some((at) => distanceBetween(at, place) < reach)) return true;
  const extent = extentOf(finding);
  if (!extent) return false;
  const { minX, minY, maxX, maxY } = growBox(extent, reach / 4);
  return place.x >= minX && place.x <= maxX && place.y >= minY && place.y <= maxY;
}
