/** What a check found, as plain data that can be printed, kept and handed to another thread. */
import { type CheckedFile, checkedFile, type PlacedFinding, type SeverityCounts } from '../format/checked-file';
import { fileJson } from '../format/json';
import type { Report } from '../report/report';
import { StencilError } from './failure';

/**
 * A stretch of text. Lines and characters are counted from zero, in UTF-16 code units, as editors do.
 *
 * @example
 * ```js
 * const { start } = report.findings[0].range;
 * console.log(`${start.line + 1}:${start.character + 1}`); // as people count
 * ```
 */
export type TextRange = CheckedFile['findings'][number]['range'];

/**
 * Something that goes wrong with a sheet: what, where in the text, where on the sheet (mm), and by how much.
 *
 * @example
 * ```js
 * for (const { check, message, range, at, measure } of report.findings) {
 *   console.log(check, message, range.start.line, at?.x, measure?.value, measure?.limit); // place in mm, measure in mm or mm²
 * }
 * ```
 */
export interface Finding extends Omit<PlacedFinding, 'mends' | 'refusals'> {
  /** Names it to {@link fixesFor}, as long as the text and its settings are the same. */
  readonly id: string;
}

/**
 * One layer, as it was measured: counts, areas in mm², lengths in mm, time in seconds.
 *
 * @example
 * ```js
 * for (const { name, islands, cutLength } of report.layers) console.log(name, islands, `${cutLength} mm`);
 * ```
 */
export type CheckedLayer = CheckedFile['layers'][number];

/**
 * What a check found in one file. Plain data: `JSON.stringify` gives what `tombolo check --format json` prints of a file,
 * and a copy by `structuredClone` or `postMessage` holds all findings. Only the report itself, not a copy, can be asked on, by
 * {@link fixesFor}, {@link bridgeIslands}, {@link cutStack} and the like.
 *
 * @example
 * ```js
 * import { check } from 'tombolo-stencil';
 *
 * const report = check(svgText, { width: '148mm' });
 * console.log(report.counts.error, report.size.width); // how many errors; mm
 * postMessage(report);
 * ```
 */
export class StencilReport {
  /** As `file` was given with the text; empty where it was not. */
  readonly path: string;
  /** mm; whether the artist stated it, or pixels were taken at 96 to the inch. */
  readonly size: { readonly width: number; readonly height: number; readonly stated: boolean };
  /** In the order in which they are sprayed. */
  readonly layers: readonly CheckedLayer[];
  /** Most serious first, then in the order of the text. */
  readonly findings: readonly Finding[];
  /** How many there are of each severity. */
  readonly counts: SeverityCounts;
  readonly #engine: Report;

  /** @internal Reports come from `check`. */
  constructor(report: Report, path: string) {
    const { drawing, settings, complete } = report;
    const lengths = [settings.width, settings.height, settings.config?.width, settings.config?.height];
    const { size, layers, findings, counts } = checkedFile({
      path,
      pathOf: (file) => file,
      report,
      findings: complete,
      counted: complete,
      sizeStated: drawing.sizeStated || lengths.some((length) => length !== undefined),
      fixesFor: () => undefined,
    });
    this.path = path;
    this.size = size ?? { width: drawing.width, height: drawing.height, stated: false };
    this.layers = layers;
    this.findings = findings.map(({ mends: _mends, refusals: _refusals, ...finding }, i) => ({
      ...finding,
      id: complete[i]?.id ?? '',
    }));
    this.counts = counts;
    this.#engine = report;
  }

  /** @internal Undefined where it is none, or a copy. */
  static engineOf(report: unknown): Report | undefined {
    return typeof report === 'object' && report !== null && #engine in report ? report.#engine : undefined;
  }

  /**
   * The object that `tombolo check --format json` prints of a file: lengths rounded to a tenth of a micrometre.
   *
   * @example
   * ```js
   * writeFileSync('report.json', JSON.stringify(report, null, 2));
   * ```
   */
  toJSON(): object {
    return fileJson(plainFile(this));
  }
}

/** As the formats take it. */
export function plainFile({ path, size, layers, findings, counts }: StencilReport): CheckedFile {
  return { path, size, layers, findings: findings.map((each) => ({ ...each, mends: [], refusals: [] })), counts };
}

/**
 * The engine's own report behind one of the library's.
 * @throws StencilError where it is none, or a copy
 */
export function engineReport(report: StencilReport, asker: string): Report {
  const found = StencilReport.engineOf(report);
  if (found) return found;
  throw new StencilError(`${asker} takes the report that check() gave in this thread: this is a copy, or none.`);
}
