/** Asks a running program from where it was called. */
import { findSourceMap } from 'node:module';
import path from 'node:path';
import { encodePath, PLACE_SEPARATOR } from '../marks';
import { isOwn, pathOf } from './own-files';

/** How many of the user's places are told, and how deep they are looked for among frames of libraries. */
const MOST_PLACES = 4;
const MOST_FRAMES = 24;

export class Callers {
  /** Places by file, line and column of the loaded text; undefined for those that are not the user's. */
  private readonly known = new Map<string, string | undefined>();
  private readonly root: string;

  constructor(root: string) {
    this.root = root;
  }

  /** Places of the user's own files that a call comes from, innermost first, as marks have them. */
  places(): string[] {
    const places: string[] = [];
    for (const site of callSites(this.places)) {
      const place = this.placeOf(site);
      if (place !== undefined && places.push(place) === MOST_PLACES) break;
    }
    return places;
  }

  private placeOf(site: NodeJS.CallSite): string | undefined {
    const file = site.getFileName();
    if (!file || file.startsWith('node:')) return undefined;
    const line = site.getLineNumber() ?? 1;
    const column = site.getColumnNumber() ?? 1;
    const key = `${file}:${line}:${column}`;
    if (this.known.has(key)) return this.known.get(key);
    const place = this.inSource(file, line, column);
    this.known.set(key, place);
    return place;
  }

  private inSource(file: string, line: number, column: number): string | undefined {
    const map = findSourceMap(file);
    const entry = map?.findEntry(line - 1, column - 1);
    const mapped = entry && 'originalSource' in entry ? entry : undefined;
    // What a bundler has added is nobody's.
    if (map && !mapped) return undefined;
    const own = pathOf(mapped?.originalSource ?? file);
    if (own === undefined || !isOwn(own)) return undefined;
    const shown = encodePath(path.relative(this.root, own).replaceAll(path.sep, '/'));
    return mapped ? `${shown}:${mapped.originalLine + 1}:${mapped.originalColumn + 1}` : `${shown}:${line}:${column}`;
  }
}

/** What goes behind a literal's own place: the callers of the function that holds the literal. */
export function afterOwnPlace(places: readonly string[]): string {
  return places
    .slice(1)
    .map((place) => PLACE_SEPARATOR + place)
    .join('');
}

/** The stack as V8 has it, whatever the program has said of how its stacks are to be written. */
function callSites(above: (...args: never[]) => unknown): readonly NodeJS.CallSite[] {
  const { prepareStackTrace, stackTraceLimit } = Error;
  const holder: { stack?: readonly NodeJS.CallSite[] } = {};
  Error.prepareStackTrace = (_error, sites) => sites;
  Error.stackTraceLimit = MOST_FRAMES;
  Error.captureStackTrace(holder, above);
  const sites = holder.stack ?? [];
  Error.prepareStackTrace = prepareStackTrace;
  Error.stackTraceLimit = stackTraceLimit;
  return sites;
}
