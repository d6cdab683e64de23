/** One JSON object for programs. Its shape is a contract: keys are added, never changed or taken away. */

import type { Generator } from '../report/generator';
import type { CheckedFile, CheckedLayer, PlacedFinding, PlacedFix } from './checked-file';
import type { Format } from './format';
import { jsonText } from './json-text';
import { tidy, tidyMeasure, tidyPoint } from './tidy';

export const formatJson: Format = ({ files, summary, failures, passed }) => {
  const { error, warning, info } = summary;
  return jsonText({
    version: 1,
    files: files.map(fileJson),
    summary: { error, warning, info },
    ...(passed > 0 && { passedByBaseline: passed }),
    ...(failures.length > 0 && { errors: failures.map((message) => ({ message })) }),
  });
};

export function fileJson({ path, size, layers, findings }: CheckedFile): object {
  return {
    path,
    size: size ? { width: tidy(size.width), height: tidy(size.height), stated: size.stated } : null,
    layers: layers.map(layerJson),
    findings: findings.map(findingJson),
  };
}

function layerJson(layer: CheckedLayer): object {
  const { name, reading, paint, openings, openingArea, materialArea, islands, cutLength, cutTime } = layer;
  return {
    name,
    reading,
    paint,
    openings,
    openingArea: tidy(openingArea),
    materialArea: tidy(materialArea),
    islands,
    cutLength: tidy(cutLength),
    ...(cutTime !== undefined && { cutTime: tidy(cutTime) }),
  };
}

function findingJson(finding: PlacedFinding): object {
  const { check, severity, message, detail, layer, range, at, measure, related, from, mends, refusals } = finding;
  return {
    check,
    severity,
    message,
    detail,
    layer,
    range,
    at: tidyPoint(at),
    measure: tidyMeasure(measure),
    related: related.map((other) => ({
      message: other.message,
      path: other.path,
      range: other.range,
      at: tidyPoint(other.at),
    })),
    ...(from && { from: fromJson(from) }),
    mends: mends.map(mendJson),
    ...(refusals.length > 0 && { refusals: refusals.map(({ title, reason }) => ({ title, reason })) }),
  };
}

/** Edits are of the text as it was read; those of other files belong to the same change. */
function mendJson({ title, preferred, safe, edits, others = [] }: PlacedFix): object {
  return { title, preferred, safe, edits, ...(others.length > 0 && { others }) };
}

/** The callers are told only where there are some. */
function fromJson({ path, range, drawn, callers }: Generator): object {
  return { path, range, drawn, ...(callers.length > 0 && { callers }) };
}
