/** Run by itself: the peak of the memory that reading the file on standard input takes. Prints JSON. */
import { readFileSync } from 'node:fs';
import { readDrawing } from '../../src/drawing/index';
import { parseMarkup } from '../../src/markup/parse';
import { peakMegabytes } from './peak-memory';

export interface ReadingMemory {
  readonly shapes: number;
  readonly milliseconds: number;
  /** Of the whole process. */
  readonly peakMegabytes: number;
}

const text = readFileSync(0, 'utf8');
const start = performance.now();
const drawing = readDrawing(parseMarkup(text));
const milliseconds = performance.now() - start;
const result: ReadingMemory = { shapes: drawing.shapes.length, milliseconds, peakMegabytes: peakMegabytes() };
console.log(JSON.stringify(result));
