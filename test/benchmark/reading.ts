/**
 * How long reading takes beside the XML parser alone. The parser is htmlparser2's, giving its own tree (domhandler's)
 * with the offsets of each node: the least that a reader of the file with places would have. Our tree, which knows the
 * places of names and values, too, takes that parser's tokens. Then the memory that files of 50 MB take.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { parseDocument } from 'htmlparser2';
import { readDrawing } from '../../src/drawing/index';
import { parseMarkup } from '../../src/markup/parse';
import { type ReadingKind, readingFile } from './reading-files';
import type { ReadingMemory } from './reading-memory';

const KINDS: readonly ReadingKind[] = ['paths of curves', 'small shapes', 'one long line'];
const LAPS = 9;

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

/** Medians in ms, one for each way; the ways take turns, so that what disturbs one lap disturbs all of them. */
function medians(ways: readonly (() => unknown)[]): number[] {
  const laps = ways.map((): number[] => []);
  for (let lap = 0; lap < LAPS; lap += 1) {
    ways.forEach((run, way) => {
      // What one way leaves behind is not for the next one to clear away.
      collectGarbage();
      const start = performance.now();
      run();
      laps[way]?.push(performance.now() - start);
    });
  }
  return laps.map((times) => times.sort((a, b) => a - b)[LAPS >> 1] as number);
}

function printTimes(kind: ReadingKind): void {
  const text = flat(readingFile(kind, 10));
  const [parser = NaN, tree = NaN, drawing = NaN] = medians([
    () => parseDocument(text, { xmlMode: true, withStartIndices: true, withEndIndices: true }),
    () => parseMarkup(text),
    () => readDrawing(parseMarkup(text)),
  ]);
  console.log(
    `reading ${(text.length / 1e6).toFixed(1)} MB of ${kind}: htmlparser2 with its tree ${parser.toFixed(0)} ms, ` +
      `our tree ${tree.toFixed(0)} ms, drawing ${drawing.toFixed(0)} ms, ` +
      `drawing/htmlparser2 ${(drawing / parser).toFixed(2)}`,
  );
}

/** A text as it comes from a file: one stretch of memory, not the pieces it was joined from. */
function flat(text: string): string {
  return Buffer.from(text).toString();
}

/** Each in a process of its own, so that the peak is its own. */
function printMemory(kind: ReadingKind, megabytes: number): void {
  const file = fileURLToPath(new URL('reading-memory.mjs', import.meta.url));
  const input = Buffer.from(readingFile(kind, megabytes));
  const result = execFileSync(process.execPath, [file], { encoding: 'utf8', input });
  const { shapes, milliseconds, peakMegabytes } = JSON.parse(result) as ReadingMemory;
  const size = input.length / 1e6;
  console.log(
    `reading ${size.toFixed(1)} MB of ${kind}: ${shapes} shapes in ${(milliseconds / 1000).toFixed(1)} s, ` +
      `peak memory ${peakMegabytes.toFixed(0)} MB, ${((peakMegabytes * 2 ** 20) / input.length).toFixed(0)} ` +
      'bytes a byte',
  );
}

for (const kind of KINDS) printTimes(kind);
for (const kind of KINDS) printMemory(kind, 50);
