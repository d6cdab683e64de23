/** A report as the preview draws it: plain numbers and path strings of our own, nothing of the artist's markup. */

import { defined } from '../../base/defined';
import { limitsOf } from '../../config/limits';
import { DEFAULT_CONFIG } from '../../config/types';
import type { Box } from '../../geometry/base/polygon-types';
import { areaOf } from '../../geometry/boolean/index';
import { pictureLayers } from '../../picture/picture';
import type { PictureLayer } from '../../picture/scene';
import type { PreviewFinding, PreviewLayer, PreviewStack } from '../../protocol/index';
import type { ReportedFinding } from '../../report/finding-id';
import type { Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import { safeSlips } from '../../stack/index';
import { oneLine } from '../../text/plain-text';
import type { CheckedDocument } from '../documents/checked-document';
import { FindingNumbers } from './finding-numbers';

export { pathData as regionPath, ringPath } from '../../picture/path-data';

/**
 * The whole print that a document is part of. Findings come document by document.
 * @param numbers of the findings of this stack, from one version to the next
 */
export function previewStackOf(checked: CheckedDocument, numbers = new FindingNumbers()): PreviewStack {
  const { uri, version, stencil, report } = checked;
  const documents = checked.documents();
  const { layers } = report.stack;
  const numberOf = numbers.number(documents);
  const frames = documents.map((each) => each.report.drawing);
  return {
    uri,
    version,
    stencil,
    elapsed: report.project?.report.elapsed ?? report.elapsed,
    documents: documents.map((each) => ({ uri: each.uri, version: each.version })),
    width: Math.max(...frames.map(({ width }) => width)),
    height: Math.max(...frames.map(({ height }) => height)),
    sizeStated: report.drawing.sizeStated,
    sheet: boxAround(layers.map(({ sheet }) => sheet.frame)) ?? frameOf(report),
    slip: limitsOf(report.settings.config ?? DEFAULT_CONFIG).slip,
    ...bedOf(report),
    ...groundOf(report),
    ...safeSlipsOf(report),
    layers: layersOf(checked),
    findings: documents.flatMap((each) =>
      each.report.findings.map((finding) => findingOf(finding, each, numberOf.get(finding) ?? 0)),
    ),
  };
}

function groundOf({ settings }: Report): Pick<PreviewStack, 'ground'> {
  return settings.config?.ground === undefined ? {} : { ground: settings.config.ground };
}

/** The least that each two neighbours bear, of those that do not bear the allowance; only what a check has measured. */
function safeSlipsOf({ stack, settings }: Report): Pick<PreviewStack, 'safeSlips'> {
  const seams = stack.knownSeams(limitsOf(settings.config ?? DEFAULT_CONFIG).slip);
  if (!seams) return {};
  return { safeSlips: safeSlips(seams).map(({ earlier, later, safe }) => ({ layers: [earlier, later], safe })) };
}

function bedOf({ settings }: Report): Pick<PreviewStack, 'bed'> {
  return settings.config?.bed ? { bed: settings.config.bed } : {};
}

function frameOf({ drawing }: Report): Box {
  return { minX: 0, minY: 0, maxX: drawing.width, maxY: drawing.height };
}

function boxAround(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  return {
    minX: Math.min(...boxes.map(({ minX }) => minX)),
    minY: Math.min(...boxes.map(({ minY }) => minY)),
    maxX: Math.max(...boxes.map(({ maxX }) => maxX)),
    maxY: Math.max(...boxes.map(({ maxY }) => maxY)),
  };
}

function layersOf(checked: CheckedDocument): PreviewLayer[] {
  const { layers } = checked.report.stack;
  const pictures = pictureLayers(layers.map(({ sheet }) => sheet));
  return layers.map(({ file, sheet }, i) => layerOf(sheet, (checked.named(file) ?? checked).uri, defined(pictures[i])));
}

function layerOf(sheet: Sheet, uri: string, picture: PictureLayer): PreviewLayer {
  const { layer, openings, material, cutLength } = sheet;
  return {
    ...picture,
    id: layer.id,
    uri,
    reading: layer.reading,
    readingStated: layer.readingStated,
    openingCount: openings.length,
    openingArea: areaOf(openings),
    materialArea: areaOf(material),
    cutLength,
  };
}

function findingOf(finding: ReportedFinding, { uri, report }: CheckedDocument, number: number): PreviewFinding {
  const { id, check, severity, message, detail, at, measure, subject, span, layerId } = finding;
  const layer = report.stack.layers.findIndex(({ sheet }) => sheet.layer.id === layerId);
  return {
    id,
    number,
    uri,
    check,
    severity,
    message: oneLine(message),
    ...(detail !== undefined && { detail }),
    at,
    measure,
    layer: layer < 0 ? undefined : layer,
    island: subject?.kind === 'island',
    chord: subject?.kind === 'thin' ? [subject.part.from, subject.part.to] : undefined,
    from: span.from,
    to: span.to,
  };
}
