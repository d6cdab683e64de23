/** Stacks for the measurements of the bench's page, and the same stack again and again while someone types. */

import { createEngine, type Engine } from '../../src/engine/index';
import type { PreviewStack } from '../../src/protocol/index';
import { previewStackOf } from '../../src/worker/bench/preview-model';
import { CheckedDocument } from '../../src/worker/documents/checked-document';
import { blobSheet } from './seeded';

const PAINTS = ['#d9a441', '#5b8f5a', '#3d6d8c', '#2b2f3a'];

/** A drawing of four layers, each a sheet of blobs, with about so many flattened segments in all. */
export function layeredDrawing(segments: number): string {
  const sheets = PAINTS.map((_, index) => blobSheet(segments / PAINTS.length, 7 + index).split('\n'));
  const groups = sheets.map(
    (lines, index) => `<g id="layer-${index}" fill="${PAINTS[index]}">\n${lines.slice(1, -2).join('\n')}\n</g>`,
  );
  return `${sheets[0]?.[0] ?? ''}\n${groups.join('\n')}\n</svg>\n`;
}

export const stackFor = (text: string): PreviewStack => previewStackOf(checked(text, 1));

/** The stacks of a drawing while a number in the middle of it is typed over, a step with each keystroke. */
export function typedStacks(text: string, keystrokes: number): PreviewStack[] {
  const at = text.indexOf('<path', text.length / 2);
  const number = /-?\d+\.\d+/.exec(text.slice(at));
  if (!number) throw new Error('The drawing has no number to type over.');
  const [from, to] = [at + number.index, at + number.index + number[0].length];
  const stacks: PreviewStack[] = [];
  const engine = createEngine();
  checked(text, 1, engine);
  for (let i = 1; i <= keystrokes; i += 1) {
    const changed = (Number(number[0]) + i * 0.01).toFixed(3);
    stacks.push(previewStackOf(checked(text.slice(0, from) + changed + text.slice(to), i + 1, engine)));
  }
  return stacks;
}

export function segmentsOf({ layers }: PreviewStack): number {
  return layers.reduce((sum, { openings }) => sum + openings.split('L').length + openings.split('M').length - 2, 0);
}

function checked(text: string, version: number, engine: Engine = createEngine()): CheckedDocument {
  return CheckedDocument.check({ uri: 'file:///measured.svg', version, open: true, text }, undefined, engine);
}
