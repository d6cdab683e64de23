/** A tag for template strings that draw: what is drawn says where. */
import { FROM_ATTRIBUTE } from './queries/generators';

/**
 * Joins a template string to SVG text, and writes into each start tag of the template itself at which line and column of
 * the program it stands (`data-tombolo-from`), so that findings lead there. Lists are joined; undefined, null and false
 * give nothing.
 */
export function svg(strings: TemplateStringsArray, ...values: readonly unknown[]): string {
  const place = callerOf(new Error('where am I called?').stack ?? '');
  const mark = place === undefined ? '' : ` ${FROM_ATTRIBUTE}="${escaped(place)}"`;
  return strings
    .map((text, index) => marked(text, mark) + (index < values.length ? written(values[index]) : ''))
    .join('');
}

/** After the names of start tags, but in comments. A name that is worked out has none of its own, but inherits one. */
function marked(text: string, mark: string): string {
  return text.replace(/<!--.*?(?:-->|$)|<[A-Za-z][\w:.-]*(?=[\s/>]|$)/gs, (found) =>
    found.startsWith('<!--') ? found : found + mark,
  );
}

function written(value: unknown): string {
  if (Array.isArray(value)) return value.map(written).join('');
  return value === undefined || value === null || value === false ? '' : String(value);
}

/** The second line of a stack that names a place: `    at draw (file:///trail/gen.mjs:12:9)`, or `draw@…` elsewhere. */
function callerOf(stack: string): string | undefined {
  const [, place] = [...stack.matchAll(/(?:^|[\s(@])((?:file:\/\/|\/|[A-Za-z]:[\\/]|https?:\/\/)[^\n()]*:\d+:\d+)/g)];
  return place?.[1] && fromHere(place[1]);
}

/** Relative to the folder that the program runs in, where there is such a thing. */
function fromHere(place: string): string {
  const path = decoded(place.replace(/^file:\/\/(?:\/(?=[A-Za-z]:))?/, '')).replaceAll('\\', '/');
  const { process } = globalThis as { readonly process?: { cwd?(): string } };
  const folder = `${process?.cwd?.() ?? ''}/`.replaceAll('\\', '/');
  return folder !== '/' && path.startsWith(folder) ? path.slice(folder.length) : path;
}

function decoded(url: string): string {
  try {
    return decodeURI(url);
  } catch {
    return url;
  }
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}
