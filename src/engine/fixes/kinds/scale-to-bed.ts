/** The artwork is made as large as the bed takes it: a file that stands alone, or all files of a project. */

import type { Finding } from '../../../checks/finding';
import type { Config } from '../../../config/types';
import { shortSides } from '../../../config/values';
import { mapResult, type Result, refuse } from '../../../report/refusal';
import type { FileEdits, Report } from '../../../report/report';
import { effectiveConfig } from '../../check/effective-config';
import type { FixKind, ProvenChange } from '../kind';
import { sizeEdits } from '../root-attributes';
import { verify } from '../verify';

const FACTS = { safe: false, effects: [], preferred: false } as const;

export const scaleToFit: FixKind = {
  ...FACTS,
  kind: 'scale-to-fit',
  scope: 'file',
  offer: (report) => (filesOf(report).length === 1 ? titleFor(report) : undefined),
  prove: proveScale,
};

export const scaleStack: FixKind = {
  ...FACTS,
  kind: 'scale-stack',
  scope: 'stack',
  offer: (report) => {
    const title = filesOf(report).length > 1 ? titleFor(report) : undefined;
    return title && `${title}, with all files of the stack`;
  },
  prove: proveScale,
};

function titleFor(report: Report): string | undefined {
  const scale = scaleFor(report);
  if (scale >= 1) return undefined;
  const { width, height } = report.drawing;
  if (scale <= 0) return 'Scale to fit the bed';
  return `Scale to fit the bed: ${shortSides(width * scale, height * scale)} (${(100 * scale).toFixed(1)} %)`;
}

/** Refused where bridges or openings would come out too narrow, or where `tombolo.json` states the size. */
function proveScale(report: Report, finding: Finding): Result<ProvenChange> {
  const scale = scaleFor(report);
  if (scale <= 0) return refuse('The margin leaves no room on the bed for the artwork.');
  const own = report.project?.file ?? '';
  const others: FileEdits[] = filesOf(report)
    .filter(([file]) => file !== own)
    .map(([file, { drawing }]) => ({ file, edits: sizeEdits(drawing, drawing.width * scale) }));
  const edits = sizeEdits(report.drawing, report.drawing.width * scale);
  const proof = verify(report, edits, { gone: [finding], within: new Map(), scale }, others);
  return mapResult(proof, ({ brings }) => ({ edits, brings, ...(others.length > 0 && { others }) }));
}

function filesOf(report: Report): readonly (readonly [string, Report])[] {
  return report.project ? [...report.project.report.files] : [['', report]];
}

/** One for all files, so that they stay in register. */
function scaleFor(report: Report): number {
  const config = effectiveConfig(report.settings);
  return Math.min(...filesOf(report).map(([, each]) => fittingScale(each, config)));
}

/** The largest scale at which artwork and margin lie on the bed, either way round, with its width in whole 0.1 mm. */
function fittingScale({ drawing: { width, height } }: Report, { bed, margin }: Config): number {
  if (!bed || !(width > 0 && height > 0)) return 0;
  const [a, b] = bed.map((side) => side - 2 * margin) as [number, number];
  const largest = Math.max(Math.min(a / width, b / height), Math.min(b / width, a / height));
  if (largest >= 1) return 1;
  return Math.floor(largest * width * 10 + 1e-6) / 10 / width;
}
