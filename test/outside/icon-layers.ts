/** Icons that have islands: single layers as people draw them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { check } from '../../src/engine/index';

const FOLDER = join('node_modules', '@mdi', 'svg', 'svg');
/** Neighbours in the list are variants of each other. */
const EVERY = 17;

export function* iconLayers(count: number): Iterable<{ readonly name: string; readonly text: string }> {
  let found = 0;
  for (const [i, name] of readdirSync(FOLDER).sort().entries()) {
    if (found >= count) return;
    if (i % EVERY !== 0) continue;
    const text = readFileSync(join(FOLDER, name), 'utf8');
    if (!check(text, { width: 100 }).sheets.some(({ pieces }) => pieces.some(({ island }) => island))) continue;
    found += 1;
    yield { name, text };
  }
}
