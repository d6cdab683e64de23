/** Reports as text: for people, for programs, for code hosts. */
import { type CheckedFile, summarize } from '../format/checked-file';
import type { Colours } from '../format/format';
import { type FormatName, FORMATS as TABLE } from '../format/formats';
import { oneOf, readOptions, StencilError, truth, words } from './failure';
import { plainFile, StencilReport } from './report';

/**
 * The names of all formats. Lengths in them are mm; places are lines and columns from one, but in JSON from zero.
 *
 * @example
 * ```js
 * import { FORMATS } from 'tombolo-stencil';
 *
 * console.log(FORMATS.join(', ')); // text, json, sarif, unix, github, gitlab, junit
 * ```
 */
export const FORMATS: readonly ReportFormat[] = /* @__PURE__ */ Object.keys(TABLE) as FormatName[];

/**
 * One of {@link FORMATS}: `text` for people, `json` as `tombolo check --format json` prints it, `sarif` 2.1.0, `unix` with a
 * line for each finding, `github` workflow commands, `gitlab` code quality, `junit` test results. Lengths in mm.
 *
 * @example
 * ```ts
 * const format: ReportFormat = 'sarif';
 * ```
 */
export type ReportFormat = FormatName;

/**
 * How reports are printed.
 *
 * @example
 * ```js
 * formatReports(reports, 'sarif', { folder: 'file:///home/marsh/' });
 * ```
 */
export interface FormatOptions {
  /** What relative paths start from, as a `file:` URL that ends with a slash; only SARIF says it. */
  readonly folder?: string;
  /** Whether a program's place, where one is known, is a finding's own in SARIF. */
  readonly atGenerator?: boolean;
}

/**
 * Prints reports as one text, as `tombolo check --format …` does, without colours.
 *
 * @param reports one, or several; each names its file as `check` was told by `file`
 * @param format lengths in mm; `text` where it is not said
 * @throws StencilError where it is no report, or there is no such format
 * @example
 * ```js
 * import { check, formatReports } from 'tombolo-stencil';
 *
 * const report = check(svgText, { width: 148, file: 'heron.svg' }); // mm
 * writeFileSync('tombolo.sarif', formatReports(report, 'sarif'));
 * ```
 */
export function formatReports(
  reports: StencilReport | readonly StencilReport[],
  format: ReportFormat = 'text',
  options: FormatOptions = {},
): string {
  const asker = 'formatReports()';
  const name = oneOf(FORMATS)(format, 'format');
  const read = readOptions<FormatOptions>(options, asker, { folder: words, atGenerator: truth });
  const files = (Array.isArray(reports) ? reports : [reports]).map((report) => fileOf(report, asker));
  return TABLE[name]({
    files,
    summary: summarize(files),
    colours: PLAIN,
    quiet: false,
    failures: [],
    passed: 0,
    ...read,
  });
}

/** A copy from another thread is as good as the report. */
function fileOf(report: unknown, asker: string): CheckedFile {
  if (report instanceof StencilReport) return plainFile(report);
  const copy = report as StencilReport;
  if (typeof copy === 'object' && copy !== null && Array.isArray(copy.findings) && Array.isArray(copy.layers)) {
    return plainFile(copy);
  }
  throw new StencilError(`${asker} takes what check() gave, or a list of that.`);
}

const same = (text: string): string => text;

const PLAIN: Colours = { bold: same, dim: same, red: same, yellow: same, green: same, blue: same, gray: same };
