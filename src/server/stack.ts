/** A report as the preview draws it: plain numbers and path strings of our own, nothing of the artist's markup. */
import type { Finding } from '../checks/finding';
import { areaOf } from '../geometry/polygons';
import type { Box, Region, Ring } from '../geometry/region';
import type { Sheet } from '../sheet/sheet';
import type { CheckedDocument } from './checked-document';
import type { Stack, StackFinding, StackLayer } from './protocol';

export function stackOf({ document, version, stencil, report }: CheckedDocument): Stack {
  const { drawing, sheets, findings, elapsed } = report;
  const frame: Box = { minX: 0, minY: 0, maxX: drawing.width, maxY: drawing.height };
  return {
    uri: document.uri, version, stencil, elapsed,
    width: drawing.width, height: drawing.height, sizeStated: drawing.sizeStated,
    sheet: sheets[0]?.frame ?? frame,
    layers: sheets.map(layerOf),
    findings: findings.map((finding) => findingOf(finding, sheets)),
  };
}

function layerOf(sheet: Sheet): StackLayer {
  const { layer, openings, material, pieces, cutLength } = sheet;
  return {
    name: layer.name, paint: layer.paint, reading: layer.reading, readingStated: layer.readingStated,
    openings: regionPath(openings), openingCount: openings.length,
    openingArea: areaOf(openings), materialArea: areaOf(material), cutLength,
    islands: pieces.filter(({ island }) => island).map(({ polygon, area, label }) => (
      { outline: regionPath([polygon]), area, label }
    )),
  };
}

function findingOf(finding: Finding, sheets: readonly Sheet[]): StackFinding {
  const { check, severity, message, at, measure, subject, span } = finding;
  const named = sheets.findIndex((sheet) => subject ? sheet === subject.sheet : sheet.layer.name === finding.layer);
  return {
    check, severity, message, at, measure,
    layer: named < 0 ? undefined : named,
    chord: subject?.kind === 'thin' ? [subject.part.from, subject.part.to] : undefined,
    from: span.from, to: span.to,
  };
}

/** The region's rings as SVG path data in mm, rounded to 1 µm; fill it by the even-odd rule. */
export function regionPath(region: Region): string {
  return region.flatMap(({ outer, holes }) => [outer, ...holes]).map(ringPath).join('');
}

export function ringPath(ring: Ring): string {
  const points: string[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) points.push(`${micron(ring[i] ?? 0)} ${micron(ring[i + 1] ?? 0)}`);
  return points.length === 0 ? '' : `M${points.join('L')}Z`;
}

const micron = (millimetres: number): number => Math.round(millimetres * 1000) / 1000;
