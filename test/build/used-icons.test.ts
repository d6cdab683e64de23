/** The font of the pages' icons: those that the pages name, as they are in the whole font. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import opentype from 'opentype.js';
import { expect, it as test } from 'vitest';
import { codesOf, iconsIn, partOfFont } from '../../src/build/used-icons.mjs';

const root = path.resolve(__dirname, '../..');
const icons = path.join(root, 'node_modules/@vscode/codicons/dist');
const codes = codesOf(readFileSync(path.join(icons, 'codicon.css'), 'utf8'));
const used = iconsIn(root, [...codes.keys()]);

/** What the sources of the pages say of icons, where that is plain. */
function named(): string[] {
  const pages = path.join(root, 'src/preview');
  const sources = readdirSync(pages, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  return sources.flatMap((name) => {
    const text = readFileSync(path.join(pages, name), 'utf8');
    const found = text.matchAll(/\bicon: '([\w-]+)'|\bicon(?:Button)?\('([\w-]+)'|codicon-([a-z][\w-]*)/g);
    return [...found].map(([, field, call, style]) => field ?? call ?? style ?? '');
  });
}

test('has each icon that a page names', () => {
  const missing = named().filter((name) => codes.has(name) && !used.includes(name));
  expect(missing).toEqual([]);
  expect(used).toEqual(
    expect.arrayContaining(['gripper', 'filter-filled', 'loading', 'lock', 'unlock', 'debug-pause']),
  );
});

test('draws them as the whole font does, in a sixth of its size', () => {
  const whole = readFileSync(path.join(icons, 'codicon.ttf'));
  const part = partOfFont(
    whole,
    used.map((name) => codes.get(name) ?? 0),
  );
  expect(part.length).toBeLessThan(whole.length / 6);
  const [before, after] = [whole, part].map((bytes) => opentype.parse(Uint8Array.from(bytes).buffer));
  for (const name of used) {
    const character = String.fromCodePoint(codes.get(name) ?? 0);
    const [one, other] = [before, after].map((font) => font?.charToGlyph(character));
    expect(other?.advanceWidth, name).toBe(one?.advanceWidth);
    const [box, same] = [one, other].map((glyph) => glyph?.getBoundingBox());
    for (const side of ['x1', 'y1', 'x2', 'y2'] as const)
      expect(same?.[side], name).toBeCloseTo(box?.[side] ?? NaN, -0.3);
  }
});
