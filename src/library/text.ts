/** Texts and edits of them, and where a program draws. */

import { parseLength as parse } from '../config/values';
import { isStencil as asks } from '../engine/stencil';
import { svg as tag } from '../engine/svg-tag';
import { applyEdits as apply, type TextEdit as Edit } from '../text/text';
import { StencilError, svgText } from './failure';

/**
 * Puts a text in place of a stretch of another, from one UTF-16 code unit to another.
 *
 * @example
 * ```js
 * const edit = { span: { from: 10, to: 14 }, text: 'M 0 0' };
 * ```
 */
export type TextEdit = Edit;

/**
 * Applies edits that all refer to the text as it is: those of a fix, or of bridges.
 *
 * @param text the text that was checked
 * @param edits places in UTF-16 code units from the text's beginning
 * @throws StencilError where two edits overlap, or one lies outside the text
 * @example
 * ```js
 * import { applyEdits, check, fixesFor } from 'tombolo-stencil';
 *
 * const report = check(svgText);
 * const [fix] = fixesFor(report, report.findings[0]).fixes;
 * const mended = fix ? applyEdits(svgText, fix.edits) : svgText;
 * ```
 */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const whole = svgText(text, 'applyEdits()');
  try {
    return apply(whole, edits);
  } catch (error) {
    throw new StencilError('The edits overlap, or were made for another text.', { cause: error });
  }
}

/**
 * Reads a length as people write it.
 *
 * @param text such as `148mm`, `6.14 in`, `.5cm`
 * @returns mm
 * @throws StencilError where it is no length with its unit
 * @example
 * ```js
 * import { parseLength } from 'tombolo-stencil';
 *
 * parseLength('1in'); // 25.4 mm
 * ```
 */
export function parseLength(text: string): number {
  const length = typeof text === 'string' ? parse(text) : undefined;
  if (length !== undefined) return length;
  throw new StencilError(`${JSON.stringify(text)} is no length with its unit, such as "148mm".`);
}

/**
 * Whether a drawing asks to be checked: its root has an attribute `data-tombolo-…`. Nothing is measured.
 *
 * @param svg the text of the file
 * @example
 * ```js
 * import { isStencil } from 'tombolo-stencil';
 *
 * const stencils = texts.filter(isStencil);
 * ```
 */
export function isStencil(svg: string): boolean {
  return asks(svgText(svg, 'isStencil()'));
}

/**
 * Joins a template string to SVG text and writes into each start tag where in your program it stands
 * (`data-tombolo-from`), so that findings lead there. Lists are joined; `undefined`, `null` and `false` give nothing. Coordinates
 * are the drawing's own units.
 *
 * @example
 * ```js
 * import { svg } from 'tombolo-stencil';
 *
 * const reed = (x) => svg`<path id="reed${x}" d="M${x} 90l1-40 1 40z"/>`;
 * ```
 */
export const svg: (strings: TemplateStringsArray, ...values: readonly unknown[]) => string = tag;
