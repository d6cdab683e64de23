/** Puts marks into the literals of a program as it is loaded. Nothing but literals and the names after them changes. */
import remapping from '@jridgewell/remapping';
import MagicString from 'magic-string';
import { type Literals, literalsOf, type MarkedLiteral, type WorkedOutName } from './literals';
import { inlineMapOf, SourcePlaces } from './source-places';
import { startTags } from './svg-names';

export interface MarkOptions {
  /** Where the text lies. */
  readonly file: string;
  readonly root: string;
  readonly attribute: string;
  /** An expression that gives the callers of the function in which it stands, as marks have them. */
  readonly callers: string;
}

/** @returns the text with marks and an inline source map, or the text itself where it writes no start tag */
export function markSource(source: string, options: MarkOptions): string {
  if (!/<(?:[A-Za-z_$'"`])/.test(source)) return source;
  const literals = literalsOf(source, options.file);
  if (!literals) return source;
  const inline = inlineMapOf(source);
  const marker = new Marker(
    source,
    literals,
    new SourcePlaces(source, options.file, options.root, inline?.map),
    options,
  );
  const marked = marker.mark();
  if (!marked) return source;
  if (inline) marked.remove(inline.at, source.length);
  const own = marked.generateMap({ hires: true, source: options.file, includeContent: true });
  const map = inline ? remapping([own as never, inline.map as never], () => null) : own;
  const encoded = Buffer.from(JSON.stringify(map)).toString('base64');
  return `${marked.toString()}\n//# sourceMappingURL=data:application/json;charset=utf-8;base64,${encoded}`;
}

class Marker {
  private readonly result: MagicString;
  private changed = false;

  private readonly source: string;
  private readonly found: Literals;
  private readonly places: SourcePlaces;
  private readonly options: MarkOptions;

  constructor(source: string, found: Literals, places: SourcePlaces, options: MarkOptions) {
    this.source = source;
    this.found = found;
    this.places = places;
    this.options = options;
    this.result = new MagicString(source);
  }

  mark(): MagicString | undefined {
    for (const literal of this.found.literals) this.literal(literal);
    for (const name of this.found.names) this.name(name);
    return this.changed ? this.result : undefined;
  }

  private literal(literal: MarkedLiteral): void {
    const ends = literal.pieces.flatMap((piece) => this.tagsIn(piece));
    for (const { at, end } of ends) this.insert(end, this.markAt(at, literal));
    if (ends.length > 0 && literal.kind === 'string') this.bracket(literal.from, literal.to);
  }

  private tagsIn({ from, to }: MarkedLiteral['pieces'][number]): { readonly at: number; readonly end: number }[] {
    const tags = [...this.source.slice(from, to).matchAll(startTags())];
    return tags
      .filter(([tag]) => !this.found.sought.has(tag.slice(1)))
      .map(({ 0: tag, index }) => ({ at: from + index, end: from + index + tag.length }));
  }

  private name({ at, in: where, from, to }: WorkedOutName): void {
    const { attribute, callers } = this.options;
    const place = this.places.placeOf(at);
    if (where !== 'sum')
      return this.insert(to, ` ${attribute}="${place}${where === 'template' ? `\${${callers}}` : ''}"`);
    this.result.appendRight(from, '(');
    this.insert(to, ` + ' ${attribute}="${place}' + ${callers} + '"')`);
  }

  /** In quotes that the literal has not. */
  private markAt(at: number, { kind, from }: MarkedLiteral): string {
    const { attribute, callers } = this.options;
    const place = this.places.placeOf(at);
    const own = this.source[from];
    const quote = own === '"' ? "'" : '"';
    if (kind === 'template') return ` ${attribute}="${place}\${${callers}}"`;
    if (kind === 'string') return ` ${attribute}=${quote}${place}${own} + ${callers} + ${own}${quote}`;
    return ` ${attribute}=${quote}${place}${quote}`;
  }

  private bracket(from: number, to: number): void {
    this.result.appendRight(from, '(');
    this.result.appendLeft(to, ')');
  }

  private insert(at: number, text: string): void {
    this.changed = true;
    this.result.appendLeft(at, text);
  }
}
