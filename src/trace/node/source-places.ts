/** From an offset in a loaded text to the place in the source that its user wrote, through its source map if it has one. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { TraceMap, traceSegment } from '@jridgewell/trace-mapping';
import { encodePath } from '../marks';
import { startTags } from './svg-names';

/** A map within a text's last lines (ECMA-426, "Linking generated code to source maps"). */
export interface InlineMap {
  readonly map: object;
  /** Where the comment begins. */
  readonly at: number;
}

const INLINE = /\n?\/\/[#@] ?sourceMappingURL=data:application\/json[^,\n]*?(;base64)?,([^\s]+)\s*$/;

export function inlineMapOf(source: string): InlineMap | undefined {
  const match = INLINE.exec(source);
  if (!match) return undefined;
  try {
    const text = match[1] ? Buffer.from(match[2] ?? '', 'base64').toString() : decodeURIComponent(match[2] ?? '');
    return { map: JSON.parse(text) as object, at: match.index };
  } catch {
    return undefined;
  }
}

export class SourcePlaces {
  private readonly text: LinedText;
  private readonly traced: TraceMap | undefined;
  private readonly originals = new Map<string, LinedText | undefined>();

  private readonly file: string;
  private readonly root: string;

  /**
   * @param file where the loaded text lies
   * @param root what places are relative to
   */
  constructor(source: string, file: string, root: string, map: object | undefined) {
    this.text = new LinedText(source);
    this.file = file;
    this.root = root;
    this.traced = map && new TraceMap(map as never, pathToFileURL(file).href);
  }

  /** `path:line:column` as marks have it, counted from one. */
  placeOf(offset: number): string {
    return this.originalPlace(offset) ?? this.place(this.file, ...this.text.positionOf(offset));
  }

  private place(file: string, line: number, column: number): string {
    return `${encodePath(path.relative(this.root, file).replaceAll(path.sep, '/'))}:${line + 1}:${column + 1}`;
  }

  /**
   * Maps have places for tokens, not for what stands within a literal, where bundlers may write other escapes. So the
   * start tag is looked for from there on: the nth of the one text is the nth of the other.
   */
  private originalPlace(offset: number): string | undefined {
    if (!this.traced) return undefined;
    const found = this.segmentBefore(offset);
    if (!found) return undefined;
    const { at, url, line, column } = found;
    const original = this.originalText(url);
    const from = original?.offsetOf(line, column) ?? 0;
    const between = this.text.text.slice(at, offset);
    const place = original && offsetOfNth(original.text, from, tagsIn(between), this.text.text.slice(offset));
    const position = place === undefined ? [line, column] : original?.positionOf(place);
    return url.startsWith('file:')
      ? this.place(fileURLToPath(url), position?.[0] ?? line, position?.[1] ?? column)
      : undefined;
  }

  /** The last segment at or before an offset: in its own line, or in one above, as a literal may have many lines. */
  private segmentBefore(offset: number) {
    let [line, column] = this.text.positionOf(offset);
    for (; line >= 0; line -= 1, column = Infinity) {
      const segment = this.traced && traceSegment(this.traced, line, column);
      if (!segment || segment.length === 1) continue;
      const url = this.traced?.resolvedSources[segment[1]] ?? '';
      return { at: this.text.offsetOf(line, segment[0]), url, line: segment[2], column: segment[3] };
    }
    return undefined;
  }

  private originalText(url: string): LinedText | undefined {
    const known = this.originals.get(url);
    if (known || this.originals.has(url)) return known;
    const text = this.traced?.sourcesContent?.[this.traced.resolvedSources.indexOf(url)] ?? readIfThere(url);
    const lined = text === undefined || text === null ? undefined : new LinedText(text);
    this.originals.set(url, lined);
    return lined;
  }
}

function readIfThere(url: string): string | undefined {
  try {
    return readFileSync(fileURLToPath(url), 'utf8');
  } catch {
    return undefined;
  }
}

function tagsIn(text: string): number {
  return [...text.matchAll(startTags())].length;
}

/** @param sought begins with what is looked for: a start tag, or a `<` before a name that is worked out */
function offsetOfNth(text: string, from: number, count: number, sought: string): number | undefined {
  const tags = text.slice(from).matchAll(startTags());
  for (let passed = 0; passed < count; passed += 1) if (tags.next().done) return undefined;
  const next = startTags().exec(sought)?.index === 0 ? tags.next().value?.index : undefined;
  return next === undefined ? undefined : from + next;
}

/** A text by lines and columns, both counted from nought in UTF-16 code units; CR, LF and CR LF end lines. */
class LinedText {
  private readonly starts: readonly number[];
  readonly text: string;

  constructor(text: string) {
    this.text = text;
    this.starts = [
      0,
      ...Array.from(text.matchAll(/\r\n|[\n\r\u2028\u2029]/g), ({ 0: end, index }) => index + end.length),
    ];
  }

  positionOf(offset: number): [line: number, column: number] {
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return [low, offset - (this.starts[low] ?? 0)];
  }

  offsetOf(line: number, column: number): number {
    return (this.starts[line] ?? this.text.length) + column;
  }
}
