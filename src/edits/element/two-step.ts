/** Surgery in two steps: the text is first rewritten so that it draws the same in a way that can be cut. */

import { readDrawing } from '../../drawing/index';
import type { Drawing, Shape } from '../../drawing/types';
import { parseMarkup } from '../../markup/parse';
import type { ElementNode } from '../../markup/tree';
import { applyEdits, type TextEdit } from '../../text/text';
import { composeEdits } from '../path/text-edits';
import { inlineUse } from './inline-use';
import type { EditResult } from './result';

/** Uses within uses are taken apart one level at a time, down to so many. */
const MAX_DEPTH = 8;
const TOO_DEEP = 'What the bridge crosses is drawn through too many uses within uses.';

/** A step that goes on with the drawing as it reads after a rewriting, and with the same shapes in it. */
export type NextStep = (drawing: Drawing, shapes: readonly Shape[], depth: number) => EditResult;

/** Makes what the uses draw copies of its own. @param depth how often that was done before */
export function inlineThenEdit(
  drawing: Drawing,
  shapes: readonly Shape[],
  uses: ReadonlySet<ElementNode>,
  depth: number,
  next: NextStep,
): EditResult {
  if (depth >= MAX_DEPTH) return { refusal: TOO_DEEP };
  const edits: TextEdit[] = [];
  for (const use of uses) {
    const edit = inlineUse(drawing, use);
    if (typeof edit === 'string') return { refusal: edit };
    edits.push(edit);
  }
  return normalizeThenEdit(drawing, shapes, edits, depth, next);
}

/** The rewritten text is read again: it must have the same shapes in the same order. */
export function normalizeThenEdit(
  drawing: Drawing,
  shapes: readonly Shape[],
  edits: readonly TextEdit[],
  depth: number,
  next: NextStep,
): EditResult {
  const {
    width,
    height,
    document: { text },
  } = drawing;
  const again = readDrawing(parseMarkup(applyEdits(text, edits)), { width, height });
  if (again.shapes.length !== drawing.shapes.length) {
    return { refusal: 'What the bridge crosses would look different once it can be cut; draw it directly first.' };
  }
  const numbers = new Map(drawing.shapes.map((shape, number) => [shape, number]));
  const same = shapes.flatMap((shape) => again.shapes[numbers.get(shape) ?? -1] ?? []);
  const cut = next(again, same, depth + 1);
  return 'refusal' in cut ? cut : { edits: composeEdits(text, edits, cut.edits) };
}
