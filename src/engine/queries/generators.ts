/** From a place of a drawing to the place of the program that drew it. */
import { checkpoint } from '../../base/checkpoint';
import { allElements, ancestors, attributeOf, nodeAt } from '../../markup/query';
import type { ElementNode, MarkupDocument } from '../../markup/tree';
import { type Generator, type GeneratorMarks, type GeneratorPlace, parseGeneratorPlace } from '../../report/generator';
import type { Span } from '../../text/text';
import { NAME_ROOM, shortened } from '../../text/wording';

/** Says of any element, or the element itself inherits it from those round it, where a program draws it. */
export const FROM_ATTRIBUTE = 'data-tombolo-from';

/** What is known of the elements of a drawing: each with its own place, first the innermost. */
type Known = ReadonlyMap<ElementNode, readonly GeneratorPlace[]>;

/** A share of all elements above which what draws them is a helper that tells too little. */
const HELPER_SHARE = 0.5;

/** Of one drawing: what draws it, and what of it is drawn where. */
export interface Generators {
  /** Where what stands in a span was drawn; undefined where nobody says so. */
  of(span: Span): Generator | undefined;
  /** Whether a line of a program draws an element, or calls what does. Lines count from zero. */
  isDrawnAt(element: ElementNode, path: string, line: number): boolean;
  /** The programs that are named, callers included, each path as it was given. */
  readonly paths: ReadonlySet<string>;
}

/** @param marks what a traced program left of this text; they win over the attributes */
export function generatorsOf(document: MarkupDocument, marks?: GeneratorMarks): Generators {
  if (!marks && !document.text.includes(FROM_ATTRIBUTE)) return nobody();
  const known = placesOf(document, marks);
  const helpers = helpersAmong(known);
  const alike = groupByPlace(known, helpers);
  return {
    of: (span) => {
      const element = markedElement(document, span, known);
      return element && generatorOf(element, known, helpers, alike);
    },
    isDrawnAt: (element, path, line) => {
      const marked = [element, ...ancestors(element)].find((each) => known.has(each));
      const places = (marked && known.get(marked)) ?? [];
      return places.some((place) => place.path === path && place.range.start.line === line);
    },
    paths: new Set([...known.values()].flatMap((places) => places.map(({ path }) => path))),
  };
}

function nobody(): Generators {
  return { of: () => undefined, isDrawnAt: () => false, paths: new Set() };
}

/**
 * @param marks what a traced program left of this text; they win over the attributes
 * @returns where what stands in a span was drawn; undefined where nobody says so
 */
export function generatorsIn(document: MarkupDocument, marks?: GeneratorMarks): Generators['of'] {
  return generatorsOf(document, marks).of;
}

function placesOf(document: MarkupDocument, marks: GeneratorMarks | undefined): Known {
  const known = new Map<ElementNode, readonly GeneratorPlace[]>();
  const read = remembered(parseGeneratorPlace);
  let next = 0;
  for (const element of allElements(document)) {
    checkpoint();
    const { from, to } = element.startTag;
    while (marks && (marks.offsets[next] ?? Infinity) <= from) next += 1;
    const marked = marks && (marks.offsets[next] ?? Infinity) <= to ? marks.places[next] : undefined;
    const written = marked ?? [attributeOf(element, FROM_ATTRIBUTE)?.value ?? ''];
    const places = written.map(read).filter((place) => place !== undefined);
    if (places.length > 0) known.set(element, places);
  }
  return known;
}

/** Many elements come from few places, each of which becomes one object. */
function remembered<Value>(make: (text: string) => Value): (text: string) => Value {
  const made = new Map<string, Value>();
  return (text) => {
    const value = made.has(text) ? (made.get(text) as Value) : make(text);
    made.set(text, value);
    return value;
  };
}

/** Places that draw most of the elements, and are called from several places which tell more. */
function helpersAmong(known: Known): ReadonlySet<GeneratorPlace> {
  const counts = new Map<GeneratorPlace, number>();
  const callers = new Map<GeneratorPlace, Set<GeneratorPlace>>();
  for (const [place, caller] of known.values()) {
    if (!place || !caller) continue;
    counts.set(place, (counts.get(place) ?? 0) + 1);
    callers.set(place, (callers.get(place) ?? new Set()).add(caller));
  }
  const isHelper = ([place, count]: [GeneratorPlace, number]): boolean =>
    count > HELPER_SHARE * known.size && (callers.get(place)?.size ?? 0) > 1;
  return new Set([...counts].filter(isHelper).map(([place]) => place));
}

/** The places of an element, that which is shown first. */
function shownFirst(places: readonly GeneratorPlace[], helpers: ReadonlySet<GeneratorPlace>): GeneratorPlace[] {
  const [innermost, caller, ...outer] = places;
  if (!innermost || !caller || !helpers.has(innermost)) return [...places];
  return [caller, innermost, ...outer];
}

type Alike = ReadonlyMap<GeneratorPlace, ReadonlyMap<ElementNode, number>>;

/** What each place draws, numbered from one in the order of the text. */
function groupByPlace(known: Known, helpers: ReadonlySet<GeneratorPlace>): Alike {
  const groups = new Map<GeneratorPlace, Map<ElementNode, number>>();
  for (const [element, places] of known) {
    const [place] = shownFirst(places, helpers);
    if (!place) continue;
    const group = groups.get(place) ?? new Map<ElementNode, number>();
    groups.set(place, group.set(element, group.size + 1));
  }
  return groups;
}

function markedElement(document: MarkupDocument, span: Span, known: Known): ElementNode | undefined {
  const node = nodeAt(document, span.from);
  if (!node) return undefined;
  const around = [node, ...ancestors(node)].filter((each) => each.kind === 'element' && span.to <= each.span.to);
  return around.find((each): each is ElementNode => known.has(each as ElementNode));
}

function generatorOf(
  element: ElementNode,
  known: Known,
  helpers: ReadonlySet<GeneratorPlace>,
  alike: Alike,
): Generator | undefined {
  const [place, ...callers] = shownFirst(known.get(element) ?? [], helpers);
  if (!place) return undefined;
  const group = alike.get(place);
  const drawn = drawnWords(element, group?.get(element) ?? 1, group?.size ?? 1);
  const id = attributeOf(element, 'id')?.value;
  return { ...place, callers, drawn, ...(id && { id }) };
}

function drawnWords(element: ElementNode, ordinal: number, count: number): string {
  const id = attributeOf(element, 'id')?.value;
  const name = shortened(id ? id : `<${element.name}>`, NAME_ROOM);
  return count === 1 ? `${name}, drawn here` : `${name}, number ${ordinal} of ${count} drawn here`;
}
