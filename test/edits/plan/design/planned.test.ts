/** What a plan makes of the design of a layer. Words in Noto Sans (OFL-1.1) and DejaVu Sans (Bitstream Vera licence). */
import type { Font } from 'opentype.js';
import { describe, expect, it } from 'vitest';
import { defined } from '../../../../src/base/defined';
import { designOf } from '../../../../src/edits/plan/design/index';
import { type Bridge, planBridges } from '../../../../src/edits/plan/index';
import type { Point } from '../../../../src/geometry/base/curve-types';
import { apply } from '../../../../src/geometry/base/matrix';
import { cross, distance, dot, subtract } from '../../../../src/geometry/base/vector';
import type { Sheet } from '../../../../src/sheet/types';
import { lineOfText, loadFace } from '../../../outside/typefaces';
import { box, circle, path, posed } from './drawings';

const SANS = loadFace('noto-sans');
const SLANTED = loadFace('noto-sans', { style: 'italic' });
const CYRILLIC = loadFace('noto-sans', { subset: 'cyrillic' });

const planned = (sheet: Sheet): readonly Bridge[] =>
  planBridges(
    sheet,
    sheet.pieces.filter(({ island }) => island),
    { width: 0.8 },
  ).bridges;

const wordIn = (face: Font, text: string, height = 30): Sheet =>
  posed(`<path transform="translate(2 70)" d="${lineOfText(face, text, height)}"/>`);

describe('the bridges of a word', () => {
  it.each<[string, Font, string]>([
    ['upright letters', SANS, 'beads'],
    ['A, 4 and R', SANS, 'RA4B'],
    ['slanted letters', SLANTED, 'beads'],
    ['Cyrillic letters', CYRILLIC, 'ДРАВ'],
  ])('of %s stand along its stems within 1°, above and below each counter', (_, face, text) => {
    const sheet = wordIn(face, text);
    const [row] = designOf(sheet).rows;
    const along = row?.along ?? { x: 0, y: 0 };
    const bridges = planned(sheet);
    for (const { from, to, length } of bridges)
      expect(Math.abs(cross(subtract(to, from), along)) / length).toBeLessThan(Math.sin(Math.PI / 180));
    for (const { piece } of row?.counters ?? []) {
      const island = sheet.pieces[piece];
      const ways = bridges.flatMap(({ from, to, ...bridge }) =>
        bridge.island === island ? [subtract(to, from)] : bridge.target === island ? [subtract(from, to)] : [],
      );
      expect(ways.map((way) => Math.sign(dot(way, along))).sort()).toEqual([-1, 1]);
    }
  });

  it('are the same in the same letters', () => {
    const sheet = wordIn(SANS, 'deed', 36);
    const bridges = planned(sheet);
    const { alike } = designOf(sheet);
    expect(alike.length).toBeGreaterThan(0);
    for (const { members } of alike) {
      const [first] = members;
      const ends = (piece: number) =>
        bridges.filter(({ island }) => island === sheet.pieces[piece]).map(({ to }) => to);
      for (const { piece, motion } of members) {
        const moved = ends(defined(first).piece).map((end) => apply(motion, end));
        for (const end of moved) expect(ends(piece).some((other) => distance(other, end) < 0.1)).toBe(true);
      }
    }
  });
});

describe('the bridges of a drawing that is mirrored', () => {
  const eye = (x: number) => circle(x, 45, 13) + circle(x, 45, 8);
  const FACE = path(
    circle(60, 60, 56) + circle(60, 60, 50) + eye(42) + eye(78) + box(44, 76, 32, 14) + box(48, 79, 24, 8),
  );

  it('are mirrored, in pairs and on the axis', () => {
    const bridges = planned(posed(FACE));
    const image = ({ x, y }: Point) => ({ x: 200 - x, y });
    expect(bridges.length).toBeGreaterThan(6);
    for (const { from, to } of bridges) {
      const [a, b] = [image(from), image(to)];
      expect(bridges.some((other) => distance(other.from, a) < 0.3 && distance(other.to, b) < 0.3)).toBe(true);
    }
  });
});
