/** Readings that are given an earlier one: the same as without it, and with its curves where the text is the same. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readDrawingIncrementally } from '../../src/drawing/index';
import type { Drawing } from '../../src/drawing/types';
import { parseMarkup } from '../../src/markup/parse';
import { applyEdits } from '../../src/text/text';
import { draw, inMillimetres } from './draw';

/** All that a reading says, in plain data. */
function said({ shapes, problems }: Drawing): unknown {
  const chains = shapes.map(({ part, subpaths, centreline = [], clips, toMm }) => ({
    part,
    toMm,
    chains: [...subpaths, ...centreline, ...clips.flatMap((clip) => clip.parts.flatMap((each) => each.subpaths))].map(
      ({ curves, spans, closed }) => ({ curves, spans: [...spans], closed }),
    ),
  }));
  return { chains, problems };
}

const REEDS = inMillimetres(
  '<clipPath id="c"><path d="M0 0h50v50h-50z"/></clipPath><marker id="m"><path d="M0 0h1v1z"/></marker>\n' +
    '<path d="M1 1C2 9 3 9 4 1z"/><g transform="translate(5 5)">' +
    '<path d="M1 1C2 9 3 9 4 1z" clip-path="url(#c)"/></g>\n' +
    '<path id="p" stroke="red" marker-end="url(#m)" d="M9 9 L 20 &#x31;2 x"/><polygon points="1,1 5,1 5,6 7"/>\n' +
    '<polyline points="1,1 5,1 5,6" fill="none" stroke="black"/><use href="#p" x="3"/><path d="M30 30a5 5 0 0110 0z"/>',
);

test('nothing differs from a reading without the earlier one, whatever the edits', () => {
  const edit = fc.record({
    at: fc.nat(REEDS.length),
    length: fc.nat(12),
    text: fc.constantFrom(
      '',
      '7',
      ' ',
      '<path d="M1 1C2 9 3 9 4 1z"/>',
      'z',
      ' transform="scale(2)"',
      'M3 3',
      '🦩',
      '<g>',
      '"',
    ),
  });
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
      let text = REEDS;
      let earlier = readDrawingIncrementally(parseMarkup(text), {}, undefined);
      for (const { at, length, text: put } of edits) {
        const from = Math.min(at, text.length);
        text = applyEdits(text, [{ span: { from, to: Math.min(text.length, from + length) }, text: put }]);
        earlier = readDrawingIncrementally(parseMarkup(text), {}, earlier);
        expect(said(earlier.drawing)).toEqual(said(draw(text)));
      }
    }),
    { numRuns: 300 },
  );
});

const PATHS = Array.from({ length: 9 }, (_, i) => `<path d="M${i} 0h1v2z"/>`);

test.each([
  ['an edit', PATHS.with(4, '<path d="M4 0h1v3z"/>'), [0, 1, 2, 3, undefined, 5, 6, 7, 8]],
  ['a path put in', PATHS.toSpliced(4, 0, '<path d="M4 0h1v3z"/>'), [0, 1, 2, 3, undefined, 4, 5, 6, 7, 8]],
  ['paths taken out', PATHS.toSpliced(2, 3), [0, 1, 5, 6, 7, 8]],
  ['another map', PATHS.with(4, '<path d="M4 0h1v2z" transform="scale(2)"/>'), [0, 1, 2, 3, undefined, 5, 6, 7, 8]],
])('with %s, the curves of all other paths are used again', (_name, paths, expected) => {
  const before = readDrawingIncrementally(parseMarkup(inMillimetres(PATHS.join(''))), {}, undefined);
  const known = before.drawing.shapes.map(({ subpaths }) => subpaths[0]?.curves);
  const after = readDrawingIncrementally(parseMarkup(inMillimetres(paths.join(''))), {}, before);
  const sources = after.drawing.shapes.map(({ subpaths }) => known.indexOf(subpaths[0]?.curves));
  expect(sources).toEqual(expected.map((index) => index ?? -1));
});

test('what neither this text nor the one before holds is let go', () => {
  const first = readDrawingIncrementally(parseMarkup(inMillimetres(PATHS.join(''))), {}, undefined);
  const second = readDrawingIncrementally(parseMarkup(inMillimetres(PATHS.slice(0, 3).join(''))), {}, first);
  expect(second.outlines.length).toBe(3);
});

test('a line is not stroked again for an edit before it, and tells its new place', () => {
  const line = '<path fill="none" stroke="black" d="M10 10L40 12L30 30"/>';
  const [before, after] = [inMillimetres(line), inMillimetres(`<path d="M1 1h5v5z"/>${line}`)];
  const first = readDrawingIncrementally(parseMarkup(before), {}, undefined);
  const second = readDrawingIncrementally(parseMarkup(after), {}, first);
  const [old, now] = [first, second].map(({ drawing }) => drawing.shapes.at(-1)?.subpaths ?? []);
  expect(now?.length).toBeGreaterThan(0);
  expect(now?.map(({ curves }) => curves).every((curves, i) => curves === old?.[i]?.curves)).toBe(true);
  expect(now?.map(({ spans }) => spans[0])).toEqual(
    draw(after)
      .shapes.at(-1)
      ?.subpaths.map(({ spans }) => spans[0]),
  );
  const wider = readDrawingIncrementally(parseMarkup(after.replace('stroke=', 'stroke-width="3" stroke=')), {}, second);
  expect(wider.drawing.shapes.at(-1)?.subpaths[0]?.curves).not.toEqual(now?.[0]?.curves);
});
