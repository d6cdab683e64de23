/**
 * Two hundred outline icons with round caps and joins (npm package @tabler/icons, MIT), 60 mm wide: a bridge of exactly the
 * limit must come out as wide as the limit where it parts such lines.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bridgeIslands, check } from '../../src/engine/index';

const FOLDER = join('node_modules', '@tabler', 'icons', 'icons', 'outline');
const ICONS = 200;
/** Neighbours in the list are variants of each other. */
const EVERY = 9;

const hasIslands = ({ sheets }: ReturnType<typeof check>): boolean =>
  sheets.some(({ pieces }) => pieces.some(({ island }) => island));

test('nearly all are bridged whole, at once', { timeout: 900_000 }, () => {
  const refused: string[] = [];
  const again: string[] = [];
  let icons = 0;
  for (const [i, name] of readdirSync(FOLDER).sort().entries()) {
    if (i % EVERY !== 0 || icons >= ICONS) continue;
    const text = readFileSync(join(FOLDER, name), 'utf8');
    const report = check(text, { width: 60 });
    if (!hasIslands(report)) continue;
    icons += 1;
    const { text: bridged, refusals } = bridgeIslands(report);
    if (refusals.length > 0) refused.push(`${name}: ${refusals.map(({ message }) => message).join(' ')}`);
    if (bridgeIslands(check(bridged, { width: 60 })).edits.length > 0) again.push(name);
  }
  expect(icons).toBe(ICONS);
  expect(again).toEqual([]);
  expect(refused.length, refused.join('\n')).toBeLessThanOrEqual(2);
});
