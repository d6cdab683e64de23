/** Words in open typefaces: DejaVu Sans (Bitstream Vera licence) and Noto Sans (OFL-1.1), upright, slanted and Cyrillic. */
import type { Font } from 'opentype.js';
import { describe, expect, it, test } from 'vitest';
import { type Counter, type Design, designOf, type LetterRow } from '../../../../src/edits/plan/design/index';
import { cross, distance, dot, subtract } from '../../../../src/geometry/base/vector';
import { lineOfText, loadFace } from '../../../outside/typefaces';
import { box, circle, designed, path, posed } from './drawings';

const SANS = loadFace('noto-sans');
const SLANTED = loadFace('noto-sans', { style: 'italic' });
const CYRILLIC = loadFace('noto-sans', { subset: 'cyrillic' });

/** A word of letters 20 mm tall, within 120 mm. */
const word = (face: Font, text: string) => `<path transform="translate(5 65)" d="${lineOfText(face, text, 20)}"/>`;

const wordIn = (face: Font, text: string): Design => designed(word(face, text));
const counters = ({ rows }: Design): Counter[] => rows.flatMap((row) => row.counters);

/** Degrees to the right of upright. */
const leanOf = ({ along }: LetterRow) => (Math.atan2(along.x, -along.y) * 180) / Math.PI;

test.each(['headboard', 'REEDBED', 'pageboy', 'Badger 8', 'AVA', 'TOW', 'Oar'])(
  'in "%s" every counter has its line, exactly upright',
  (text) => {
    const sheet = posed(word(SANS, text));
    const { rows } = designOf(sheet);
    expect(rows).toHaveLength(1);
    expect(rows[0]?.along).toEqual({ x: 0, y: -1 });
    const islands = sheet.pieces.flatMap(({ island }, number) => (island ? [number] : []));
    expect(rows[0]?.counters.map(({ piece }) => piece).sort()).toEqual(islands.sort());
  },
);

test.each(['ДОРОГА', 'вода', 'ЖАБА', 'фея'])('in "%s" as well', (text) => {
  const design = wordIn(CYRILLIC, text);
  expect(design.rows).toHaveLength(1);
  expect(design.rows[0]?.along).toEqual({ x: 0, y: -1 });
});

test.each(['headboard', 'REEDBED', 'Badger 8'])('in slanted "%s" the lines lean as the face says', (text) => {
  const { rows } = wordIn(SLANTED, text);
  expect(rows).toHaveLength(1);
  const { post } = SLANTED.tables as { readonly post?: unknown };
  expect(post).toMatchObject({ italicAngle: expect.closeTo(-leanOf(rows[0] as LetterRow), 0) });
});

describe('a word that is turned', () => {
  it.each([30, -17, 90, -90, 143])('by %d° has its lines along its stems', (turn) => {
    const { rows } = designed(word(SANS, 'headboard'), { turn });
    expect(rows).toHaveLength(1);
    expect(rows[0]?.counters).toHaveLength(7);
    const up = (turn * Math.PI) / 180;
    expect(Math.abs(cross(rows[0]?.along ?? { x: 1, y: 0 }, { x: Math.sin(up), y: -Math.cos(up) }))).toBeLessThan(0.01);
  });

  it('is told from letters that stand one above the other', () => {
    const letters = [...'ROADBED'].map(
      (letter, i) => `<path transform="translate(50 ${16 + 16 * i})" d="${lineOfText(SANS, letter, 18)}"/>`,
    );
    expect(designed(letters.join('')).rows).toEqual([]);
  });
});

describe('the places of a counter', () => {
  it('are one above and one below, on one line along the stems', () => {
    for (const face of [SANS, SLANTED]) {
      const { rows } = wordIn(face, 'headboard');
      for (const { along, counters } of rows) {
        for (const { places, at } of counters) {
          expect(places).toHaveLength(2);
          const ends = places.flatMap(({ from, to }) => [from, to]);
          for (const end of ends) expect(Math.abs(cross(subtract(end, at), along))).toBeLessThan(1e-6);
          expect(places.map(({ from, to }) => Math.sign(dot(subtract(to, from), along)))).toEqual([1, -1]);
        }
      }
    }
  });

  it('cross the strokes where they are thin: no way is longer than one and a half stems', () => {
    const stem = 0.094 * 20;
    for (const text of ['headboard', 'pageboy', 'DOPQO']) {
      for (const { places } of counters(wordIn(SANS, text)))
        for (const { from, to } of places) expect(distance(from, to)).toBeLessThan(1.5 * stem);
    }
  });

  it.each(['B', '8', 'g'])('of the counters of "%s" are on one line through both', (letter) => {
    const face = letter === 'g' ? loadFace('dejavu-sans') : SANS;
    const design = wordIn(face, `I${letter}I`);
    const places = counters(design).map(({ at }) => at.x);
    expect(Math.max(...places) - Math.min(...places)).toBeLessThan(1e-6);
  });

  it('are the same in the same letters', () => {
    const all = counters(wordIn(SANS, 'oooo')).map(({ at, places }) => places.map(({ from }) => subtract(from, at)));
    for (const places of all)
      places.forEach((from, i) => expect(distance(from, all[0]?.[i] ?? { x: 9, y: 9 })).toBeLessThan(0.01));
  });
});

/** Six equal islands about the middle, each in a gap of its own. */
const PETALS = [0, 60, 120, 180, 240, 300]
  .map((turn) => `<g transform="rotate(${turn} 60 60)">${path(box(50, 10, 20, 30) + box(54, 14, 12, 20))}</g>`)
  .join('');

describe('what is no row of letters', () => {
  it.each([
    ['petals', PETALS],
    ['two counters', path(circle(30, 60, 12) + circle(30, 60, 8) + circle(70, 60, 12) + circle(70, 60, 8))],
    [
      'one above the other',
      path([0, 1, 2].map((i) => circle(60, 20 + 35 * i, 14) + circle(60, 20 + 35 * i, 9)).join('')),
    ],
    ['one in the other', path([50, 44, 36, 30, 22, 16].map((r) => circle(60, 60, r)).join(''))],
    [
      'of very different heights',
      path(box(0, 0, 30, 110) + box(6, 6, 18, 98) + box(40, 95, 12, 12) + box(60, 0, 50, 60)),
    ],
  ])('%s', (_, inside) => {
    expect(designed(inside).rows).toEqual([]);
  });
});
