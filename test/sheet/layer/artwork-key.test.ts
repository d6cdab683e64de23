import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import type { Report } from '../../../src/report/report';
import { artworkKey } from '../../../src/sheet/layer/artwork-key';

const stencil = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50">${body}</svg>`;
const keyOf = (body: string) => artworkKey(check(stencil(body)).drawing.shapes);
const sameArtwork = (body: string, other: string) => {
  const [a, b] = [keyOf(body), keyOf(other)];
  return a.whole === b.whole && a.colours === b.colours;
};

const PATH = '<path d="M10 10H20V20Q15 25 10 20C9 17 9 13 10 10Z"/><circle cx="30" cy="30" r="5"/>';

describe('the key of an artwork', () => {
  it('looks through the way it is written', () => {
    const rewritten = '<g>\n<path d="m10 10 10 0 0 10q-5 5-10 0c-1-3-1-7 0-10z"/>\n<circle r="5" cx="30" cy="30"/></g>';
    expect(sameArtwork(PATH, rewritten)).toBe(true);
  });

  it.each([
    ['a control point', PATH.replace('Q15 25', 'Q15 26')],
    ['a cubic', PATH.replace('C9 17', 'C9 18')],
    ['an arc', PATH.replace('r="5"', 'r="5.1"')],
    ['the paint', PATH.replace('<path', '<path fill="red"')],
    ['the rule', PATH.replace('<path', '<path fill-rule="evenodd"')],
    ['one more shape', `${PATH}<rect width="1" height="1"/>`],
    [
      'a clip',
      `<clipPath id="c"><rect width="15" height="15"/></clipPath>${PATH.replace('<path', '<path clip-path="url(#c)"')}`,
    ],
  ])('sees a change of %s', (_, changed) => {
    expect(sameArtwork(PATH, changed)).toBe(false);
  });

  it('tells what is cut from the colours that it is drawn in', () => {
    const [plain, red] = [keyOf(PATH), keyOf(PATH.replace('<path', '<path fill="red"'))];
    expect(red.whole).toBe(plain.whole);
    expect(red.colours).not.toBe(plain.colours);
  });

  it('tells each shape by itself', () => {
    const [plain, moved] = [keyOf(PATH), keyOf(PATH.replace('Q15 25', 'Q15 26'))];
    expect([...moved.shapes].map((key, i) => key === plain.shapes[i])).toEqual([false, true]);
  });
});

describe('an earlier report', () => {
  const layers = (first: string, second: string) => stencil(`<g id="a">${first}</g><g id="b">${second}</g>`);
  const rect = (x: number) =>
    `<rect x="${x}" y="5" width="10" height="30"/><rect x="${x + 10.4}" y="5" width="9" height="30"/>`;
  const facts = ({ sheets, findings }: Report) => ({
    sheets: sheets.map(({ drawing: _, layer, ...rest }) => ({ ...rest, layer: layer.name, reading: layer.reading })),
    findings: findings.map(({ subject: _, ...rest }) => rest),
  });

  it('changes nothing but the time', () => {
    const before = layers(rect(5), rect(25));
    const after = layers(`\n${rect(5)}`, rect(25.2));
    const full = check(after);
    const quick = check(after, {}, check(before));
    expect(facts(quick)).toEqual(facts(full));
    expect(quick.sheets[0]?.material).not.toBe(full.sheets[0]?.material);
  });

  it('keeps what was measured of an unchanged layer only', () => {
    const earlier = check(layers(rect(5), rect(25)));
    const [a, b] = check(layers(rect(5), rect(24)), {}, earlier).sheets;
    expect(a?.material).toBe(earlier.sheets[0]?.material);
    expect(b?.material).not.toBe(earlier.sheets[1]?.material);
  });

  it('is of no use under other settings', () => {
    const earlier = check(layers(rect(5), rect(25)));
    expect(check(earlier.text, { kerf: 0.1 }, earlier).sheets[0]?.material).not.toBe(earlier.sheets[0]?.material);
  });
});
