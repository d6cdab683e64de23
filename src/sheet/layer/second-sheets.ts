/** Groups that are sheets of their own although the file, or the element, that they stand in is one layer. */
import type { Drawing, Shape } from '../../drawing/types';
import { ancestors, attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { PARTNER_ATTRIBUTE } from './partner';

/** What is one layer. */
interface Part {
  readonly element: ElementNode | undefined;
  readonly name: string;
  readonly shapes: readonly Shape[];
  readonly with?: string | undefined;
}

/** What a second sheet is called, after the first. */
export const SECOND_SHEET = ' (second sheet)';

/**
 * A part of a drawing that is one layer, and behind it the groups of it that say with which layer they go: they are cut
 * apart from it, and sprayed in the same paint.
 */
export function secondSheetsApart<Whole extends Part>(whole: Whole): Whole[] {
  const groups = bySecondSheet(whole.shapes);
  const first = groups.get(undefined);
  if (!first || groups.size < 2) return [whole];
  groups.delete(undefined);
  const others = [...groups].map(([element, shapes]) => secondSheet(whole, element, shapes));
  return [{ ...whole, shapes: first }, ...others];
}

/** The second sheets of a drawing that go with an element by its id. */
export function secondSheetsOf<Whole extends Part>(drawing: Drawing, whole: Whole, id: string): Whole[] {
  const groups = bySecondSheet(drawing.shapes);
  return [...groups].flatMap(([element, shapes]) => {
    if (!element || element === whole.element || attributeOf(element, PARTNER_ATTRIBUTE)?.value.trim() !== id)
      return [];
    return [secondSheet(whole, element, shapes)];
  });
}

function secondSheet<Whole extends Part>(whole: Whole, element: ElementNode | undefined, shapes: Shape[]): Whole {
  return { ...whole, element, shapes, name: whole.name + SECOND_SHEET, with: whole.name };
}

function bySecondSheet(shapes: readonly Shape[]): Map<ElementNode | undefined, Shape[]> {
  const groups = new Map<ElementNode | undefined, Shape[]>();
  for (const shape of shapes) {
    const group = secondSheetOf(shape);
    const own = groups.get(group);
    if (own) own.push(shape);
    else groups.set(group, [shape]);
  }
  return groups;
}

/** The outermost group round a shape that says with which layer it goes. */
function secondSheetOf({ element, instances }: Shape): ElementNode | undefined {
  const place = instances[0] ?? element;
  const within = [place, ...ancestors(place)].filter(({ parent }) => parent !== undefined);
  return within.findLast((each) => attributeOf(each, PARTNER_ATTRIBUTE) !== undefined);
}
