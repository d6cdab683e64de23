/** Compares the places of a traced drawing with the sources that its user wrote. */
import { parseMarkup } from '../../src/markup/parse';
import { allElements, attributeOf } from '../../src/markup/query';
import type { GeneratorMarks } from '../../src/report/generator';

export interface Placed {
  readonly name: string;
  readonly id: string | undefined;
  /** `path:line:column`, innermost first. */
  readonly places: readonly string[];
}

/** Every element of a drawing with its marks, read independently of the engine's lookup. */
export function placedElements(text: string, { offsets, places }: GeneratorMarks): Placed[] {
  return [...allElements(parseMarkup(text))].map((element) => {
    const { from, to } = element.startTag;
    const own = offsets.flatMap((offset, index) => (offset > from && offset <= to ? [places[index] ?? []] : []));
    return { name: element.name, id: attributeOf(element, 'id')?.value, places: own.flat() };
  });
}

/** What stands at a place of a source, up to the end of its line. Lines end as the language says. */
export function sourceAt(place: string, read: (path: string) => string): string {
  const [, path = '', line, column] = /^(.*):(\d+):(\d+)$/s.exec(place) ?? [];
  return (
    read(path)
      .split(/\r\n|[\n\r]/)
      [Number(line) - 1]?.slice(Number(column) - 1) ?? ''
  );
}
