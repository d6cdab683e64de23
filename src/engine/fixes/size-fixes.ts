/** Mends of the size at which a drawing is cut: state it, or make it fit the bed. */
import type { Finding } from '../../checks/finding';
import { shortNumber } from '../../config/length';
import type { Config } from '../../config/types';
import type { FileEdits, Fix, Report } from '../../report/report';
import { effectiveConfig } from '../check/effective-config';
import { sizeEdits } from './root-attributes';
import { verify } from './verify';

/** Writes the size that is guessed now, so that every measure stays as it is. */
export function stateSizeFix(report: Report, finding: Finding): Fix[] {
  const { drawing } = report;
  const edits = sizeEdits(drawing, 1);
  if (typeof verify(report, edits, { gone: [finding], within: new Map() }) === 'string') return [];
  const title = `State the size: ${sides(drawing.width, drawing.height)}`;
  return [{ kind: 'state-size', title, check: finding.check, preferred: true, safe: true, edits }];
}

/**
 * Makes the artwork as large as the bed takes it, with all files of its project. Not offered where bridges or openings
 * would come out too narrow, or where `tombolo.json` states the size.
 */
export function scaleToFitFix(report: Report, finding: Finding): Fix[] {
  const config = effectiveConfig(report.settings);
  const files = report.project ? [...report.project.report.files] : [['', report] as const];
  const scale = Math.min(...files.map(([, each]) => fittingScale(each, config)));
  if (!(scale > 0 && scale < 1)) return [];
  const own = report.project?.file ?? '';
  const others: FileEdits[] = files
    .filter(([file]) => file !== own)
    .map(([file, { drawing }]) => ({ file, edits: sizeEdits(drawing, scale) }));
  const edits = sizeEdits(report.drawing, scale);
  if (typeof verify(report, edits, { gone: [finding], within: new Map(), scale }, others) === 'string') return [];
  const { width, height } = report.drawing;
  const all = others.length > 0 ? ', with all files of the stack' : '';
  const title = `Scale to fit the bed: ${sides(width * scale, height * scale)} (${(100 * scale).toFixed(1)} %)${all}`;
  const mend = { title, check: finding.check, preferred: false, safe: false, edits };
  return [others.length > 0 ? { ...mend, kind: 'scale-stack', others } : { ...mend, kind: 'scale-to-fit' }];
}

/** The largest scale at which artwork and margin lie on the bed, either way round, with its width in whole 0.1 mm. */
function fittingScale({ drawing: { width, height } }: Report, { bed, margin }: Config): number {
  if (!bed || !(width > 0 && height > 0)) return 0;
  const [a, b] = bed.map((side) => side - 2 * margin) as [number, number];
  const largest = Math.max(Math.min(a / width, b / height), Math.min(b / width, a / height));
  if (largest >= 1) return 1;
  return Math.floor(largest * width * 10 + 1e-6) / 10 / width;
}

function sides(width: number, height: number): string {
  return `${shortNumber(width)} × ${shortNumber(height)} mm`;
}
