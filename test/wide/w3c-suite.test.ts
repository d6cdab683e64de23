/**
 * The W3C's SVG 1.1 Second Edition test suite (BSD-3-Clause), as the Debian package librsvg2-tests carries it:
 * `apt-get install -y --no-install-recommends librsvg2-tests`. Each file as we read it, beside what @resvg/resvg-js
 * paints of it without fonts; the groups on filters and text, which have nothing to cut, are left out. A file agrees,
 * or is excused for a named reason, or is wrong.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/drawing/index';
import type { Drawing } from '../../src/drawing/types';
import { parseMarkup } from '../../src/markup/parse';
import { compare, renderDrawing, renderText } from '../outside/paint';

const FOLDER = '/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1';

/** Pixels across; the files are 480 wide, so that their hairlines are drawn as areas. */
const WIDTH = 1440;

/** Pixels of about 1.5 million that may differ: crossings of thin lines come out a little otherwise. */
const TOLERATED = 40;

/** Files where the renderer used for comparison is not the judge, with what is. */
const JUDGED_OTHERWISE: Readonly<Record<string, string>> = {
  'struct-cond-03-t': 'requiredFeatures is gone from SVG 2 and counts as fulfilled; the renderer compares with SVG 1.1',
  'types-basic-02-f': 'units are case-insensitive in CSS; the accepted reference picture shows it as we read it',
};

/** What we say we do not cut, by the words of the finding. */
const REASONS: readonly (readonly [string, RegExp])[] = [
  ['text', /^Text/],
  ['filter', /^A filter/],
  ['gradient', /^A gradient/],
  ['pattern', /^A pattern/],
  ['mask', /^A mask/],
  ['raster image', /^A raster image/],
  ['elements in an entity', /^This entity holds elements/],
];

interface Row {
  readonly name: string;
  readonly verdict: 'agree' | 'excused' | 'wrong';
  readonly note: string;
}

function judge(name: string): Row {
  const text = readFileSync(join(FOLDER, `${name}.svg`), 'utf8');
  const drawing = readDrawing(parseMarkup(text));
  const { wrong } = compare(renderText(text, WIDTH), renderDrawing(drawing, WIDTH));
  const note = `${wrong} pixels`;
  if (wrong <= TOLERATED) return { name, verdict: 'agree', note };
  const reason = JUDGED_OTHERWISE[name] ?? excuse(drawing);
  return reason ? { name, verdict: 'excused', note: reason } : { name, verdict: 'wrong', note };
}

function excuse(drawing: Drawing): string | undefined {
  const named = REASONS.filter(([, words]) => drawing.problems.some(({ message }) => words.test(message)));
  return named.length > 0 ? named.map(([reason]) => reason).join(', ') : undefined;
}

/** In these groups nothing may be wrong, and what is excused is listed here by name. */
const CORE = new RegExp(
  '^(paths-data|painting-fill|painting-stroke|painting-marker|coords-trans|coords-viewattr|struct-use|struct-symbol|' +
    'struct-group|styling-css|shapes|masking-path)',
);
const CORE_EXCUSED = ['coords-viewattr-01-b', 'coords-viewattr-02-b'];

describe('W3C SVG 1.1 Second Edition test suite', () => {
  it('every file agrees or says why not', async () => {
    const names = readdirSync(FOLDER)
      .filter((file) => file.endsWith('.svg'))
      .map((file) => file.slice(0, -4));
    expect(names.length).toBeGreaterThanOrEqual(158);
    const rows: Row[] = [];
    for (const name of names) {
      rows.push(judge(name));
      // The renderer's pictures are only freed between turns of the event loop.
      await setImmediate();
    }
    for (const verdict of ['agree', 'excused', 'wrong'] as const) {
      const some = rows.filter((row) => row.verdict === verdict);
      console.log(`${verdict}: ${some.length}`);
      if (verdict !== 'agree') for (const { name, note } of some) console.log(`  ${name}: ${note}`);
    }
    const core = rows.filter(({ name }) => CORE.test(name));
    expect(core.length).toBeGreaterThan(55);
    expect(core.filter(({ verdict }) => verdict === 'excused').map(({ name }) => name)).toEqual(CORE_EXCUSED);
    expect(rows.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
  });
});
