/** Fixes of findings, each proven by checking the changed text. */
import { fixAll as mendAll } from '../engine/fixes/fix-all';
import { fixesFor as engineFixes } from '../engine/fixes/index';
import { findingById } from '../engine/queries/find-finding';
import type { FindingId } from '../report/finding-id';
import type { Fix as EngineFix } from '../report/fix';
import { whyNot } from '../report/refusal';
import { callback, readOptions, type Signal, StencilError, signalOption, truth, whileWanted } from './failure';
import { engineReport, type Finding, type StencilReport } from './report';
import type { TextEdit } from './text';

/**
 * A change that was proven to do what its title says. Places in UTF-16 code units; lengths in titles are mm.
 *
 * @example
 * ```js
 * const mended = applyEdits(svgText, fix.edits);
 * ```
 */
export interface Fix {
  /** What it does, for a list: "Widen to 0.80 mm". */
  readonly title: string;
  /** A name for what it does, always the same: `bridge-island`, `widen-bridge`. */
  readonly kind: string;
  /** Whether it is the best thing to do. */
  readonly preferred: boolean;
  /** Whether nothing that is painted changes. */
  readonly safe: boolean;
  /** Of the text that was checked. */
  readonly edits: readonly TextEdit[];
  /** Edits of other files of the project, by their names. */
  readonly others: readonly { readonly file: string; readonly edits: readonly TextEdit[] }[];
  /** Findings that come of it, a sentence each. */
  readonly brings: readonly { readonly check: string; readonly message: string }[];
}

/**
 * What became of all that may be tried for a finding.
 *
 * @example
 * ```js
 * const { fixes, refusals } = fixesFor(report, finding);
 * if (fixes.length === 0) for (const { title, message } of refusals) console.log(title, message);
 * ```
 */
export interface FixesOfFinding {
  /** In the order in which they are offered. */
  readonly fixes: readonly Fix[];
  /** What was tried and does not hold, and why, a sentence each. */
  readonly refusals: readonly { readonly title: string; readonly message: string }[];
}

/**
 * All fixes of a finding. Each is proven by checking the changed text, which takes about as long as a check.
 *
 * @param report that the finding stands in, from `check`
 * @param finding one of its findings, or its `id`
 * @throws StencilError where the report has no such finding; the signal's reason where it ends the work
 * @example
 * ```js
 * import { applyEdits, check, fixesFor } from 'tombolo-stencil';
 *
 * const report = check(svgText, { width: 148 }); // mm
 * const [fix] = fixesFor(report, report.findings[0]).fixes;
 * if (fix) console.log(fix.title, applyEdits(svgText, fix.edits));
 * ```
 */
export function fixesFor(
  report: StencilReport,
  finding: Finding | string,
  options: { readonly signal?: Signal } = {},
): FixesOfFinding {
  const source = engineReport(report, 'fixesFor()');
  const { signal } = readOptions<{ signal?: Signal }>(options, 'fixesFor()', { signal: signalOption });
  const id = typeof finding === 'string' ? finding : finding?.id;
  const found = findingById(source, id as FindingId);
  if (!found) throw new StencilError('The report has no such finding: fixesFor() takes one of its findings, or an id.');
  const { fixes, refusals } = whileWanted(signal, () => engineFixes(found.report, found.finding));
  return {
    fixes: fixes.map(plainFix),
    refusals: refusals.map(({ title, ...why }) => ({ title, message: whyNot(why) })),
  };
}

function plainFix({ title, kind, preferred, safe, edits, others = [], brings }: EngineFix): Fix {
  return {
    title,
    kind,
    preferred,
    safe,
    edits,
    others: others.map(({ file, edits: theirs }) => ({ file, edits: theirs })),
    brings: brings.map(({ check, message }) => ({ check, message })),
  };
}

/**
 * Which fixes {@link fixAll} makes.
 *
 * @example
 * ```js
 * fixAll(report, { safe: true });
 * ```
 */
export interface FixAllOptions {
  /** Only what changes nothing that is painted. */
  readonly safe?: boolean;
  /** Ends the work where nobody waits for it any more. */
  readonly signal?: Signal;
  /** Is told the title of each fix that was made. */
  readonly progress?: (title: string) => void;
}

/**
 * What came of fixing all. Lengths in titles are mm.
 *
 * @example
 * ```js
 * const { text, done } = fixAll(report);
 * console.log(done.map(({ title }) => title).join('\n'));
 * ```
 */
export interface FixAllOutcome {
  /** The drawing with all that was fixed. */
  readonly text: string;
  /** What was done, in this order. */
  readonly done: readonly { readonly check: string; readonly title: string }[];
}

/**
 * Bridges the islands, and makes the preferred fix of each finding, one after the other, as long as one holds; each is proven
 * against the text that the last one left. Other files of a project stay as they are. Titles say lengths in mm.
 *
 * @param report of a drawing, from `check`
 * @param options `safe`: only what leaves every layer to be seen where it is; `signal`, `progress`
 * @throws StencilError where an option is wrong; the signal's reason where it ends the work
 * @example
 * ```js
 * import { check, fixAll } from 'tombolo-stencil';
 *
 * const { text, done } = fixAll(check(svgText, { width: '148mm' }), { safe: true });
 * ```
 */
export function fixAll(report: StencilReport, options: FixAllOptions = {}): FixAllOutcome {
  const source = engineReport(report, 'fixAll()');
  const { signal, ...rest } = readOptions<FixAllOptions>(options, 'fixAll()', {
    safe: truth,
    signal: signalOption,
    progress: callback(),
  });
  return whileWanted(signal, () => mendAll(source, rest));
}
