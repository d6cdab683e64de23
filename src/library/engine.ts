/** An engine with a memory of its own. */
import { createEngine as makeEngine } from '../engine/engine';
import { type CheckOptions, type ProjectReport, projectReport, settingsOf, type Texts, textsOf } from './check';
import { numberFrom, readOptions, svgText, whileWanted } from './failure';
import { StencilReport } from './report';

/**
 * Checks the same drawings again and again, and remembers what it has worked out.
 *
 * @example
 * ```js
 * const engine = createEngine();
 * const report = engine.check(text, { width: '148mm' }, 'heron.svg'); // again after each edit
 * ```
 */
export interface StencilEngine {
  /** As `check`. `document` names the drawing whose states follow one another. Lengths in mm. */
  check(svg: string, options?: CheckOptions, document?: string): StencilReport;
  /** As `checkProject`. `project` names the project whose states follow one another. Lengths in mm. */
  checkProject(texts: Texts, options: CheckOptions, project?: string): ProjectReport;
}

/**
 * An engine of one's own, with one memory for all that it is asked.
 *
 * @param options `memory`: how many bytes, about, it may remember; 134,217,728 (128 MiB) where it is not said
 * @throws StencilError where an option is wrong
 * @example
 * ```js
 * import { createEngine } from 'tombolo-stencil';
 *
 * const engine = createEngine({ memory: 64 * 2 ** 20 }); // bytes
 * for (const text of states) engine.check(text, { width: '148mm' }, 'heron.svg');
 * ```
 */
export function createEngine(options: { readonly memory?: number } = {}): StencilEngine {
  const { memory } = readOptions<{ memory?: number }>(options, 'createEngine()', { memory: numberFrom(0, 2 ** 40) });
  const engine = makeEngine(memory === undefined ? {} : { limit: memory });
  return {
    check: (svg, given, document) => {
      const text = svgText(svg, 'check()');
      const { settings, signal } = settingsOf(given, 'check()');
      const report = whileWanted(signal, () => engine.check(text, settings, document));
      return new StencilReport(report, settings.file ?? '');
    },
    checkProject: (texts, given, project) => {
      const { settings, signal } = settingsOf(given, 'checkProject()');
      const files = textsOf(texts, settings, 'checkProject()');
      return projectReport(whileWanted(signal, () => engine.checkProject(files, settings, project)));
    },
  };
}
